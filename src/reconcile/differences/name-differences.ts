import { loggedFilesOfTakes, loggedFilesOn, namesTogether } from '../../day/files/take-files.ts';
import type { Day, PartId } from '../../day/model.ts';
import { mainAtTake } from '../../day/recorders/rolling.ts';
import type { SettlementChoice } from '../../day/wrap/card-settlement.ts';
import type { TakeFields } from '../../facts/kinds/take-logged.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { fileMarksOf, isMono, patternWith } from '../log-and-card/file-marks.ts';
import { stemKey, stemOf } from '../log-and-card/plain-key.ts';
import { fileNamesIn, recordingName } from '../log-and-card/recorded.ts';
import type { CheckedPair } from './checked-pair.ts';
import type { Checking } from './checking.ts';
import type { Found } from './difference.ts';
import { settingAllDay } from './setting-differences.ts';

/** Files named differently than the report says: their base names, and the track marks of mono files. */
export function nameDifferences(checking: Checking): Found[] {
  const differing = checking.pairs.filter((pair) => !isNamedAlike(pair));
  const marked = differing.filter((pair) => isMarkedOtherwise(checking, pair));
  return [
    ...namesDiffer(
      checking,
      differing.filter((pair) => !marked.includes(pair)),
    ),
    ...marksDiffer(checking, marked),
  ];
}

/** One correctly named file of a set is enough: others may be of tracks the log does not know. */
function isNamedAlike({ logged, recorded, recording, header }: CheckedPair): boolean {
  if (logged.stems.some((stem) => recorded.stems.has(stem))) return true;
  const hasMarks = header.fileLayout === 'mono' && isMono(recording) && recording.parts.length === 1;
  return isSplit(recording) && !hasMarks && recorded.shortStems.has(logged.stem);
}

/** Only one of several files has a mark after its name; on a single one that is another name. */
const isSplit = ({ files }: Recording): boolean => files.length > 1;

function isMarkedOtherwise(
  { day, recorder }: Checking,
  { logged, recorded, recording }: CheckedPair,
): boolean {
  const marks = fileMarksOf(day, recording, recorder);
  if (marks) return stemKey(marks.stem) === logged.stem;
  return isSplit(recording) && recorded.shortStems.has(logged.stem);
}

const said = ({ day, recorder }: Checking, { take, recording }: CheckedPair) => ({
  was: namesTogether((loggedFiles(day, recorder).get(take.id) ?? []).map(({ name }) => name)),
  is: namesTogether(fileNamesIn(recording)),
});

const loggedFiles = (day: Day, recorder: PartId | undefined) =>
  recorder === undefined ? loggedFilesOfTakes(day) : loggedFilesOn(day, recorder);

const detailOf = (pairs: readonly CheckedPair[]) => ({
  count: pairs.reduce((sum, { recording }) => sum + recording.files.length, 0),
  takes: pairs.map(({ take }) => take.id),
});

/** The name of a take is the one on its main recorder; what others call it is noted with the check. */
const renaming = ({ day, recorder }: Checking, pair: CheckedPair): { take: string; fields: TakeFields }[] => {
  const { take, recording } = pair;
  if (recorder !== undefined && recorder !== mainAtTake(day, take.id)) return [];
  const marks = fileMarksOf(day, recording, recorder);
  const [first = ''] = fileNamesIn(recording);
  const file = marks ? marks.stem + first.slice(stemOf(first).length) : recordingName(recording);
  return file.length <= 200 ? [{ take: take.id, fields: { file } }] : [];
};

const describing = (takes: { take: string; fields: TakeFields }[]): SettlementChoice[] =>
  takes.length > 0 ? [{ kind: 'describe-takes', takes }] : [];

/** A recorder with other file names uses them all day, so that is reported once. */
function namesDiffer(checking: Checking, pairs: readonly CheckedPair[]): Found[] {
  const [first] = pairs;
  if (first && pairs.length >= 4 && pairs.length * 2 > checking.pairs.length)
    return [
      {
        code: 'file-names-differ',
        ...said(checking, first),
        detail: detailOf(pairs),
        settlements: describing(pairs.flatMap((pair) => renaming(checking, pair))),
      },
    ];
  return pairs.map((pair) => ({
    code: 'file-name-differs',
    take: pair.take.id,
    recording: pair.recording,
    ...said(checking, pair),
    settlements: describing(renaming(checking, pair)),
  }));
}

/** Marks depend on the recorder and not the take: if all are alike they go into the name pattern. */
function marksDiffer(checking: Checking, pairs: readonly CheckedPair[]): Found[] {
  const [first] = pairs;
  if (!first) return [];
  const marks = new Set(
    pairs.map(({ recording }) => fileMarksOf(checking.day, recording, checking.recorder)?.pattern ?? ''),
  );
  const [only = ''] = marks;
  const filePattern = marks.size === 1 && only ? patternWith(only, checking.header.filePattern) : null;
  return [
    {
      code: 'file-names-differ',
      aspect: 'marks',
      ...said(checking, first),
      detail: detailOf(pairs),
      settlements: filePattern ? [settingAllDay(checking, { filePattern })] : [],
    },
  ];
}
