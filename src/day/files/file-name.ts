import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import { filledHeader } from '../header.ts';
import type { Day, Part, PartId, Rig, Take, TakeId } from '../model.ts';
import { isOnRecorder, mainAtTake, rollOfTake, rollOn } from '../recorders/rolling.ts';
import { settingsAtTake } from '../settings/settings.ts';
import { slateText } from '../slate.ts';
import { takesInOrder } from '../takes.ts';
import { checkPattern, type NameFacts, type Piece, SERIES_MARK, stemOf } from './file-pattern.ts';
import { safeName, safeStem } from './safe-name.ts';
import { ofEachRecorder, trackLabels } from './track-labels.ts';

/** The default pattern: `'24BT3'`. */
const DEFAULT_PIECES: readonly Piece[] = [{ token: 'slate' }, { literal: 'T' }, { token: 'take' }];

/** A parsed pattern. */
interface Naming {
  readonly pieces: readonly Piece[];
  /** What separates a name from the track mark at its end; null if the pattern puts the mark elsewhere. */
  readonly lead: string | null;
  readonly width: number;
}

function namingOf(pattern: string): Naming {
  const read = checkPattern(pattern);
  const pieces = read.ok ? read.value : DEFAULT_PIECES;
  const last = pieces.at(-1)!;
  const isTrack = (piece: Piece): boolean => 'token' in piece && piece.token.startsWith('track');
  if (!pieces.some(isTrack)) return { pieces, lead: '_', width: 1 };
  if (!isTrack(last) || pieces.filter(isTrack).length > 1) return { pieces, lead: null, width: 1 };
  const before = pieces.at(-2);
  const literal = before && 'literal' in before ? before.literal : '';
  const lead = /[\s._-][^\s._-]*$/.exec(literal)?.[0] ?? '';
  const kept = literal.slice(0, literal.length - lead.length);
  return {
    pieces: [...pieces.slice(0, literal ? -2 : -1), ...(kept ? [{ literal: kept }] : [])],
    lead,
    width: 'token' in last && last.token === 'track:2' ? 2 : 1,
  };
}

interface Names {
  /** For each take, what all of its files' names have in common. */
  readonly base: ReadonlyMap<TakeId, string>;
  readonly onTrack: (take: Take, track: PartId) => string;
}

/** As reports had it before each recorder had names of its own: with the first one's pattern, counting all takes. */
export const AS_ONE = 'as-one';

const memory = new WeakMap<Day, Map<PartId, Names>>();

function namesOn(day: Day, recorder: PartId): Names {
  const known = memory.get(day) ?? new Map<PartId, Names>();
  memory.set(day, known);
  const names = known.get(recorder) ?? namesOf(day, recorder);
  known.set(recorder, names);
  return names;
}

function namesOf(day: Day, recorder: PartId): Names {
  const facts = factsOf(day, recorder);
  const namings = new Map<string, Naming>();
  const namingFor = (take: Take): Naming => {
    const { filePattern } = settingsAtTake(day, take.id, recorder === AS_ONE ? FIRST_RECORDER : recorder);
    const naming = namings.get(filePattern) ?? namingOf(filePattern);
    namings.set(filePattern, naming);
    return naming;
  };
  const typed = (take: Take): string => nameTyped(day, take, recorder);
  const patterned = (of: NameFacts): string =>
    safeName(stemOf(namingFor(of.take).pieces, of), 'wav', `take-${of.count}`);
  const nameOf = (take: Take): string => {
    const of = facts.get(take.id);
    return typed(take) || (of ? patterned(of) : '');
  };
  const base = new Map(takesOn(day, recorder).map((take) => [take.id, nameOf(take)]));
  return {
    base,
    onTrack: (take, track) => {
      const mark = trackMarks(day.rig).get(track) ?? track;
      const of = facts.get(take.id);
      const naming = namingFor(take);
      if (naming.lead === null && of && !typed(take)) return patterned({ ...of, track: mark });
      const wide = /^\d+$/.test(mark) ? mark.padStart(naming.width, '0') : mark;
      return markedName(nameOf(take), `${naming.lead ?? '_'}${wide}`);
    },
  };
}

/** The name typed by hand, which is of the file that the mixer sees: the one on the main recorder. */
export const nameTyped = (day: Day, take: Take, recorder: PartId): string =>
  recorder === AS_ONE || recorder === mainAtTake(day, take.id) ? (take.file?.trim() ?? '') : '';

const takesOn = (day: Day, recorder: PartId): Take[] =>
  takesInOrder(day).filter(({ id }) => recorder === AS_ONE || isOnRecorder(day, id, recorder));

/** The naming facts of every take with sound. */
function factsOf(day: Day, recorder: PartId): Map<TakeId, NameFacts> {
  const { date } = filledHeader(day.header);
  const facts = new Map<TakeId, NameFacts>();
  const restarts = new Map<string, number>();
  for (const take of takesOn(day, recorder)) {
    if (take.kind === 'mos') continue;
    const board = `${take.kind}/${SERIES_MARK[take.kind] ? '' : slateText(take.slate)}/${take.number}`;
    const earlier = restarts.get(board) ?? 0;
    if (take.falseStart) restarts.set(board, earlier + 1);
    const roll = recorder === AS_ONE ? rollOfTake(day, take.id) : rollOn(day, take.id, recorder);
    facts.set(take.id, { take, roll, date, count: facts.size + 1, restarts: earlier, track: '' });
  }
  return facts;
}

/**
 * The expected file name of every take that a recorder has; for a take with a file per track, the part before
 * the track marks. Empty for MOS, which has no file. A name typed by hand wins. An unreadable pattern counts as
 * `{slate}T{take}`. Plain takes `'24BT3.wav'`, a false start `'24BT3FS.wav'`, a pickup `'24BT4PU.wav'`, a
 * wild track `'WT2.wav'`, a room tone `'RT1.wav'`.
 */
export const fileNamesOn = (day: Day, recorder: PartId): ReadonlyMap<TakeId, string> =>
  namesOn(day, recorder).base;

/** The same of every take of the day, on its main recorder. */
export const fileNamesOf = (day: Day): ReadonlyMap<TakeId, string> =>
  day.rig.recorders.length === 0
    ? fileNamesOn(day, FIRST_RECORDER)
    : new Map(takesInOrder(day).map(({ id }) => [id, fileNamesOn(day, mainAtTake(day, id)).get(id) ?? '']));

/** The name of one track's mono file, on the main recorder if none is named: `'24BT3_5.wav'`. */
export const fileNameOnTrack = (
  day: Day,
  take: Take,
  track: PartId,
  recorder: PartId = mainAtTake(day, take.id),
): string => namesOn(day, recorder).onTrack(take, track);

const knownMarks = new WeakMap<readonly Part[], ReadonlyMap<PartId, string>>();

const LONGEST_MARK_BYTES = 24;

/** The marks of mono files, from the tracks' names: `'5'`, `'L'`. Those of one recorder differ on any file system. */
export function trackMarks(rig: Rig): ReadonlyMap<PartId, string> {
  const known = knownMarks.get(rig.tracks);
  if (known) return known;
  const labels = trackLabels(rig);
  const marks = new Map(ofEachRecorder(rig.tracks).flatMap((own) => [...marksOf(own, labels)]));
  knownMarks.set(rig.tracks, marks);
  return marks;
}

function marksOf(tracks: readonly Part[], labels: ReadonlyMap<PartId, string>): Map<PartId, string> {
  const marks = new Map<PartId, string>();
  const taken = new Set<string>();
  for (const [at, { id }] of tracks.entries()) {
    let mark =
      safeStem(labels.get(id)!.replaceAll(/[^\p{L}\p{N}]+/gu, '-'), LONGEST_MARK_BYTES) || `${at + 1}`;
    while (taken.has(mark.toLowerCase())) mark += `-${at + 1}`;
    taken.add(mark.toLowerCase());
    marks.set(id, mark);
  }
  return marks;
}

const LONGEST_NAME_BYTES = 100;
const ENDING = /\.[A-Za-z0-9]{1,5}$/;

/** A file name with a mark before its extension, kept even if the name must be cut: `'24BT3_5.wav'`. */
export function markedName(name: string, mark: string): string {
  const ending = ENDING.exec(name)?.[0] ?? '';
  const stem = ending ? name.slice(0, -ending.length) : name;
  const room = LONGEST_NAME_BYTES - new TextEncoder().encode(mark).length;
  return `${safeStem(stem, room) || stem}${mark}${ending}`;
}
