import { namesOnCard } from '../day/files/names-on-card.ts';
import { loggedFilesOfTakes, loggedFilesOn } from '../day/files/take-files.ts';
import type { Day, FactOf, PartId } from '../day/model.ts';
import { tracksOf } from '../day/recorders/recorder-parts.ts';
import type { Draft } from '../facts/fact.ts';
import { FIRST_RECORDER } from '../facts/kinds/recorder-set.ts';
import type { Recording } from '../wave/recording/recordings.ts';
import { type Difference, openDifferences } from './differences/difference.ts';
import { fileTracksOf } from './log-and-card/file-tracks.ts';
import { cutText } from './log-and-card/plain-key.ts';
import { fileNamesIn } from './log-and-card/recorded.ts';
import type { CardMatch, Pair } from './pairing/match-recordings.ts';
import { hasOfTakes } from './pairing/rolling-on-cards.ts';

type Checked = Omit<Extract<Draft, { kind: 'card-checked' }>, 'kind'>;
type Names = NonNullable<FactOf<'card-checked'>['names']>;

/** How much of the cards was read. `stopped`: not every file. */
export interface FilesRead {
  readonly files: number;
  readonly stopped: boolean;
}

/** What a check found, for the report. */
export function checkedCard(
  day: Day,
  match: CardMatch,
  differences: readonly Difference[],
  read: FilesRead,
): Checked {
  const names = namesOf(day, pairsOfEach(match));
  const cards = hasOfTakes(day, match.cards);
  const recordings = [match.recordings, match.alsoThere, match.ofOtherDays, match.ofOtherUnits].flat();
  return {
    files: read.files,
    recordings: recordings.length,
    bytes: recordings.flatMap(({ files }) => files).reduce((sum, { size }) => sum + size, 0),
    open: openDifferences(differences).length,
    matched: match.pairs.length,
    without: [...match.takesWithout],
    unsure: match.questions.map(({ take }) => take),
    unlogged: match.recordingsWithout.length,
    ...(read.stopped && { stopped: true }),
    ...(names.length > 0 && { names }),
    ...(cards.length > 0 && { cards: cards.map(({ only, ...has }) => ({ ...has, only: [...only] })) }),
  };
}

/** Where the card names files otherwise than the log, or than an earlier check did. */
function namesOf(day: Day, pairs: readonly Pair[]): Names {
  const ofEach = new Map<PartId | undefined, ReturnType<typeof namesKnown>>();
  return pairs.flatMap(({ take, recording, recorder }) => {
    const { logged, known } = ofEach.get(recorder) ?? namesKnown(day, recorder);
    ofEach.set(recorder, { logged, known });
    const files = filesOf(day, recording, recorder);
    const expected = (logged.get(take) ?? []).map(({ name }) => name);
    const isAsLogged =
      sameNames(
        expected,
        files.map(({ name }) => name),
      ) && !known.has(take);
    return isAsLogged ? [] : [{ take, ...(recorder && { recorder }), files }];
  });
}

/** Of several recorders, each card names its own files: those that are also there too. */
const pairsOfEach = ({ cards, pairs }: CardMatch): readonly Pair[] =>
  cards.length > 0
    ? cards.flatMap(({ recorder, pairs: own }) => own.map((pair) => ({ ...pair, recorder })))
    : pairs;

const namesKnown = (day: Day, recorder: PartId | undefined) => ({
  logged: recorder === undefined ? loggedFilesOfTakes(day) : loggedFilesOn(day, recorder),
  known: namesOnCard(day, recorder),
});

const sameNames = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.toSorted().join('/') === b.toSorted().join('/');

const MOST_FILES = 500;

function filesOf(day: Day, recording: Recording, recorder: PartId = FIRST_RECORDER): Names[number]['files'] {
  const isSet = recording.files.length > 1;
  const tracks = isSet ? [...(fileTracksOf(tracksOf(day.rig, recorder), recording) ?? [])] : [];
  const trackOf = new Map(tracks.map(([track, { file }]) => [file, track]));
  return fileNamesIn(recording)
    .slice(0, MOST_FILES)
    .map((name, at) => {
      const track = trackOf.get(recording.files[at]!.name);
      return { name: cutText(name, 200), ...(track && { track }) };
    });
}
