import { filledHeader } from '../header.ts';
import type { Day, Part, PartId, Rig, Take, TakeId } from '../model.ts';
import { rollOfTake } from '../recorders/rolling.ts';
import { settingsAtTake } from '../settings/settings.ts';
import { slateText } from '../slate.ts';
import { takesInOrder } from '../takes.ts';
import { checkPattern, type NameFacts, type Piece, SERIES_MARK, stemOf } from './file-pattern.ts';
import { safeName, safeStem } from './safe-name.ts';
import { trackLabels } from './track-labels.ts';

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

const memory = new WeakMap<Day, Names>();

function namesOf(day: Day): Names {
  const known = memory.get(day);
  if (known) return known;
  const facts = factsOf(day);
  const namings = new Map<string, Naming>();
  const namingFor = (take: Take): Naming => {
    const { filePattern } = settingsAtTake(day, take.id);
    const naming = namings.get(filePattern) ?? namingOf(filePattern);
    namings.set(filePattern, naming);
    return naming;
  };
  const typed = (take: Take): string => take.file?.trim() ?? '';
  const patterned = (of: NameFacts): string =>
    safeName(stemOf(namingFor(of.take).pieces, of), 'wav', `take-${of.count}`);
  const nameOf = (take: Take): string => {
    const of = facts.get(take.id);
    return typed(take) || (of ? patterned(of) : '');
  };
  const base = new Map(takesInOrder(day).map((take) => [take.id, nameOf(take)]));
  const names: Names = {
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
  memory.set(day, names);
  return names;
}

/** The naming facts of every take with sound. */
function factsOf(day: Day): Map<TakeId, NameFacts> {
  const { date } = filledHeader(day.header);
  const facts = new Map<TakeId, NameFacts>();
  const restarts = new Map<string, number>();
  for (const take of takesInOrder(day)) {
    if (take.kind === 'mos') continue;
    const board = `${take.kind}/${SERIES_MARK[take.kind] ? '' : slateText(take.slate)}/${take.number}`;
    const earlier = restarts.get(board) ?? 0;
    if (take.falseStart) restarts.set(board, earlier + 1);
    const roll = rollOfTake(day, take.id);
    facts.set(take.id, { take, roll, date, count: facts.size + 1, restarts: earlier, track: '' });
  }
  return facts;
}

/**
 * The expected file name of every take of the day; for a take with a file per track, the part before the
 * track marks. Empty for MOS, which has no file. A name typed by hand wins. An unreadable pattern counts as
 * `{slate}T{take}`. Plain takes `'24BT3.wav'`, a false start `'24BT3FS.wav'`, a pickup `'24BT4PU.wav'`, a
 * wild track `'WT2.wav'`, a room tone `'RT1.wav'`.
 */
export const fileNamesOf = (day: Day): ReadonlyMap<TakeId, string> => namesOf(day).base;

/** The name of one track's mono file: `'24BT3_5.wav'`. */
export const fileNameOnTrack = (day: Day, take: Take, track: PartId): string =>
  namesOf(day).onTrack(take, track);

const knownMarks = new WeakMap<readonly Part[], ReadonlyMap<PartId, string>>();

const LONGEST_MARK_BYTES = 24;

/** The marks of mono files, from the tracks' names: `'5'`, `'L'`. All differ on any file system. */
export function trackMarks(rig: Rig): ReadonlyMap<PartId, string> {
  const known = knownMarks.get(rig.tracks);
  if (known) return known;
  const marks = new Map<PartId, string>();
  const taken = new Set<string>();
  for (const [at, [track, label]] of [...trackLabels(rig)].entries()) {
    let mark = safeStem(label.replaceAll(/[^\p{L}\p{N}]+/gu, '-'), LONGEST_MARK_BYTES) || `${at + 1}`;
    while (taken.has(mark.toLowerCase())) mark += `-${at + 1}`;
    taken.add(mark.toLowerCase());
    marks.set(track, mark);
  }
  knownMarks.set(rig.tracks, marks);
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
