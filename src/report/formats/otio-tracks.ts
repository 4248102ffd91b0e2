import type { TakeFile } from '../../day/files/take-files.ts';
import type { PartId, Stamp } from '../../day/model.ts';
import { TIMECODE_RATES } from '../../facts/kinds/day-described.ts';
import { isOneOf } from '../../shared/open-word.ts';
import { framesPerDay, type RateId, rateOf } from '../../time/rate.ts';
import type { OnRecorder } from '../on-recorders.ts';
import { framesAt } from '../take-end.ts';
import type { TakeLine } from '../take-lines.ts';

/** A file on a timeline. */
export interface Placed {
  readonly take: TakeLine;
  /** Empty if the take has sound but no file. */
  readonly file: string;
  /** The recorder it is on; null on a day with one. */
  readonly on: OnRecorder | null;
  /** Its only track; null if all tracks of the take are in it. */
  readonly track: PartId | null;
  readonly rate: RateId;
  /** Where its timecode starts, in frames from midnight; null if unknown. */
  readonly start: number | null;
  readonly frames: number;
  /** Where it stands on its timeline, in frames after the earliest file of its rate. */
  readonly at: number;
}

/** Files behind one another, none over another; with starts known, at their distance. */
export interface FilesInRow {
  readonly rate: RateId;
  readonly on: OnRecorder | null;
  /** The recorder's track if the files are mono; null if each has them all. */
  readonly track: PartId | null;
  readonly timed: boolean;
  readonly files: readonly Placed[];
}

/** A take that is not on the timeline, and why. */
export interface NotPlaced {
  readonly take: TakeLine;
  readonly why: 'MOS' | 'still rolling' | 'no length';
}

export interface OtioTracks {
  readonly rows: readonly FilesInRow[];
  readonly notPlaced: readonly NotPlaced[];
  /** For every rate, the timecode frame that its rows count from. */
  readonly origins: ReadonlyMap<RateId, number>;
}

/**
 * The files of a day in rows. Timecode of two rates cannot be laid on one ruler (an hour at 23.976 lasts 3.6 s
 * longer), so each rate has rows of its own; so have recorders, mono tracks, and takes at the same timecode.
 */
export function otioTracks(takes: readonly TakeLine[]): OtioTracks {
  const timed = placedByTimecode(takes);
  const origins = new Map<RateId, number>();
  for (const { rate, at } of timed) origins.set(rate, Math.min(at, origins.get(rate) ?? at));
  const fromOrigin = timed.map((file) => ({ ...file, at: file.at - origins.get(file.rate)! }));
  return {
    rows: [...rowsOf(fromOrigin, true), ...rowsOf(placedInOrder(takes), false)],
    notPlaced: takes.flatMap(notPlaced),
    origins: new Map([...origins].map(([rate, at]) => [rate, withinDay(at, rate)])),
  };
}

const withinDay = (frames: number, rate: RateId): number => {
  const day = framesPerDay(rate);
  return ((frames % day) + day) % day;
};

const HALF_A_DAY = 0.5;

/** The files of a take on one recorder. */
interface TakeFiles {
  readonly on: OnRecorder | null;
  readonly files: readonly TakeFile[];
  /** Their timecode, where it is known. */
  readonly start: Stamp | null;
  readonly rate: RateId;
}

/** A take on each of its recorders; one that counts at another rate has a start that nobody noted. */
function onEach({ recorders, files, exact: { start, length } }: TakeLine): TakeFiles[] {
  const rate = start?.rate ?? length?.rate;
  if (!rate) return [];
  if (recorders.length === 0) return [{ on: null, files, start, rate }];
  return recorders.map((on) => {
    const own = on.set.timecodeRate;
    return on.isAtRate
      ? { on, files: on.files, start, rate }
      : { on, files: on.files, start: null, rate: isOneOf(TIMECODE_RATES, own) ? own : rate };
  });
}

/** In the order of the day, timecode that falls by more than half a day has passed midnight. */
function placedByTimecode(takes: readonly TakeLine[]): Placed[] {
  let day = 0;
  let before: number | null = null;
  return takes.flatMap((take): Placed[] => {
    const { start } = take.exact;
    if (take.kind === 'mos' || !start) return [];
    const share = start.frames / framesPerDay(start.rate);
    if (before !== null && before - share > HALF_A_DAY) day += 1;
    if (before !== null && share - before > HALF_A_DAY) day -= 1;
    before = share;
    const at = start.frames + day * framesPerDay(start.rate);
    return onEach(take).flatMap((own) => (own.start ? filesOf(take, own, at) : []));
  });
}

/** Files whose start is unknown follow one another, for their length alone is known. */
function placedInOrder(takes: readonly TakeLine[]): Placed[] {
  const ends = new Map<string, number>();
  return takes.flatMap((take) => {
    if (take.kind === 'mos') return [];
    const unknown = onEach(take).filter(({ start }) => start === null);
    return unknown
      .flatMap((own) => filesOf(take, own, 0))
      .map((file) => {
        const key = JSON.stringify([file.rate, file.on?.id, file.track]);
        const at = ends.get(key) ?? 0;
        ends.set(key, at + file.frames);
        return { ...file, at };
      });
  });
}

function filesOf(take: TakeLine, { on, files, start, rate }: TakeFiles, at: number): Placed[] {
  const { length } = take.exact;
  if (!length) return [];
  const frames = framesAt(length, rate);
  const named = files.length > 0 ? files : [{ name: '', track: null }];
  return named.map(({ name, track }) => ({
    ...{ take, file: name, on, track, rate, frames, at },
    start: start?.frames ?? null,
  }));
}

/** Earliest first, each in the first row of its kind that it fits behind. */
function rowsOf(files: readonly Placed[], timed: boolean): FilesInRow[] {
  const rows: (Omit<FilesInRow, 'files'> & { readonly files: Placed[]; end: number })[] = [];
  for (const file of files.toSorted((a, b) => a.at - b.at)) {
    const { rate, on, track } = file;
    const isFree = (row: (typeof rows)[number]): boolean =>
      row.rate === rate && row.on?.id === on?.id && row.track === track && row.end <= file.at;
    const free = rows.find(isFree);
    const row = free ?? { rate, on, track, timed, files: [], end: 0 };
    if (!free) rows.push(row);
    row.files.push(file);
    row.end = file.at + file.frames;
  }
  const order = (rate: RateId): number => rateOf(rate).num / rateOf(rate).den;
  return rows.map(({ end: _, ...row }) => row).sort((a, b) => order(a.rate) - order(b.rate));
}

function notPlaced(take: TakeLine): NotPlaced[] {
  if (take.kind === 'mos') return [{ take, why: 'MOS' }];
  if (take.exact.length) return [];
  return [{ take, why: take.status.includes('rolling') ? 'still rolling' : 'no length' }];
}
