import { foldDay } from '../day/fold/fold.ts';
import { EMPTY_HEADER, type WorkingHeader, workingHeader } from '../day/header.ts';
import type { Day, Header, PartId, Slate } from '../day/model.ts';
import type { Draft } from '../facts/fact.ts';
import type { HeaderFields } from '../facts/kinds/day-described.ts';
import type { TakeFields } from '../facts/kinds/take-logged.ts';
import { stampFacts } from '../facts/stamp.ts';
import { idSource } from '../shared/ids.ts';
import { fail, ok, type Problem, type Result } from '../shared/result.ts';
import { compareText } from '../wave/recording/recording-sets.ts';
import type { Recording } from '../wave/recording/recordings.ts';
import { type CardTracks, cardTracksOf, rigOf } from './card-tracks.ts';
import { differencesOf } from './differences/differences-of.ts';
import { commonestSettings } from './differences/setting-differences.ts';
import { commonest } from './log-and-card/commonest.ts';
import { takeOfFile } from './log-and-card/file-fields.ts';
import { dayAxis, labelDayMs } from './log-and-card/label-time.ts';
import { loggedTakes } from './log-and-card/logged.ts';
import { cutText, stemKey } from './log-and-card/plain-key.ts';
import { byTapeAndStart, recordedOf, recordingName } from './log-and-card/recorded.ts';
import { matchRecordings } from './pairing/match-recordings.ts';

/**
 * Builds the log of an unlogged day from the card: its header, a track for every channel, and a take for
 * every recording in order of time, with rolls. The files know tracks but no chain, so each name is a typed
 * exception from its first take on; once the rig is set up and the names removed, they follow from the chain.
 * Notes are separate, since they need the takes' ids: see `notesFromCard`. A day that has tracks keeps them.
 * Fails with `card-empty`.
 */
export function startLogFromCard(
  found: readonly Recording[],
  slateStyle: Slate['style'] = 'lettered',
  onto?: Day,
): Result<readonly Draft[], Problem> {
  if (found.length === 0) return fail({ code: 'card-empty' });
  const fields = headOf(found, slateStyle);
  const header = workingHeader({ header: { ...EMPTY_HEADER, ...(fields as Partial<Header>) } }, '25');
  const recordings = inOrderOfTime(found, header);
  const card = cardTracksOf(recordings, onto);
  const draftsWith = (isNamed: (at: number, name: string) => boolean): Draft[] =>
    draftsFor(recordings, card, { fields, header }, isNamed);
  const unnamed = draftsWith(() => false);
  const expected = expectedNames(unnamed);
  // A name is only typed if the pattern would give another.
  return ok(draftsWith((at, name) => !expected[at]?.includes(stemKey(name))));
}

/** The card's notes for takes that have none, once the takes have ids. */
export const notesFromCard = (day: Day, recordings: readonly Recording[]): Draft[] =>
  differencesOf(day, matchRecordings(day, recordings)).flatMap(({ code, settlements }) =>
    code !== 'note-not-logged'
      ? []
      : settlements.flatMap((one): Draft[] =>
          one.kind === 'add-note' ? [{ kind: 'note-added', take: one.take, text: one.text }] : [],
        ),
  );

function headOf(recordings: readonly Recording[], slateStyle: Slate['style']): HeaderFields {
  const text = (values: readonly (string | undefined)[]): string | undefined => {
    const value = commonest(values.map((one) => one?.trim() || undefined));
    return value === undefined ? undefined : cutText(value, 200);
  };
  const production = text(recordings.map(({ project }) => project));
  const recorder = text(recordings.map(({ files }) => files[0]!.bext?.originator));
  const dates = recordings.flatMap(({ files }) => files[0]!.bext?.originationDate ?? []).sort();
  return {
    ...(production !== undefined && { production }),
    ...(recorder !== undefined && { recorder }),
    ...(dates[0] !== undefined && { date: dates[0] }),
    ...commonestSettings(recordings),
    slateStyle,
  };
}

/** By date and start if every file has a date and several differ; else from the longest pause on. */
function inOrderOfTime(recordings: readonly Recording[], header: WorkingHeader): Recording[] {
  const dates = recordings.map(({ files }) => files[0]!.bext?.originationDate);
  const isDated = new Set(dates).size > 1 && !dates.includes(undefined);
  const starts = recordings.map((one) => recordedOf(one).startMs);
  const axis = dayAxis(
    starts.filter((ms) => ms !== undefined),
    labelDayMs(header.timecodeRate),
  );
  return recordings
    .map((recording, at) => {
      const ms = starts[at];
      return {
        recording,
        date: isDated ? dates[at]! : '',
        x: ms === undefined ? Number.MAX_VALUE : isDated ? ms : axis.at(ms),
      };
    })
    .sort((a, b) => compareText(a.date, b.date) || a.x - b.x || byTapeAndStart(a.recording, b.recording))
    .map(({ recording }) => recording);
}

function draftsFor(
  recordings: readonly Recording[],
  card: CardTracks,
  { fields, header }: { readonly fields: HeaderFields; readonly header: WorkingHeader },
  isNamed: (at: number, name: string) => boolean,
): Draft[] {
  const numbers = new Numbers();
  const named = new Map<PartId, string>();
  let roll = '';
  const drafts: Draft[] = [{ kind: 'day-described', fields }, ...rigOf(card)];
  for (const [at, recording] of recordings.entries()) {
    const tape = cutText(recording.tape?.trim() ?? '', 200);
    if (tape !== '' && tape !== roll) drafts.push({ kind: 'roll-changed', roll: tape });
    roll = tape || roll;
    drafts.push(...namesOf(recording, card, named));
    const { file, ...take } = numbers.filled(takeOfFile(recording, header));
    const typed = file !== undefined && isNamed(at, recordingName(recording));
    drafts.push({ kind: 'take-logged', fields: { ...take, ...(typed && { file }) } });
  }
  return drafts;
}

/** Slates and numbers for files without them: the previous slate, and one above the highest number so far. */
class Numbers {
  #slate: TakeFields['slate'];
  readonly #highest = new Map<string, number>();

  filled(fields: TakeFields): TakeFields {
    const slate = fields.slate ?? this.#slate;
    this.#slate = slate;
    const isSeries = fields.kind === 'wild' || fields.kind === 'tone';
    const series = isSeries ? fields.kind : JSON.stringify(slate);
    const highest = this.#highest.get(`${series}`) ?? 0;
    const number = fields.number ?? Math.min(9999, highest + 1);
    this.#highest.set(`${series}`, Math.max(highest, number));
    return { ...fields, ...(slate && { slate }), number };
  }
}

/** Names that are new from this recording on; a track it lacks loses its name. */
function namesOf(recording: Recording, card: CardTracks, named: Map<PartId, string>): Draft[] {
  const drafts: Draft[] = [];
  const now = card.namesIn(recording);
  for (const { part } of card.tracks) {
    const name = now.get(part) ?? '';
    if (name === (named.get(part) ?? '')) continue;
    named.set(part, name);
    drafts.push({ kind: 'track-named', track: part, name: name || null });
  }
  return drafts;
}

/** The file names the pattern gives to the takes in these facts, without extensions. */
function expectedNames(drafts: readonly Draft[]): (readonly string[])[] {
  const nextId = idSource('cardlogcard').next;
  const day = foldDay('card', stampFacts(drafts, { day: 'card', at: 0, zone: 0, nextId }));
  return loggedTakes(day).map(({ stems }) => stems);
}
