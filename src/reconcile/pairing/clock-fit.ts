import { aroundDay, type DayAxis } from '../log-and-card/label-time.ts';
import type { Logged } from '../log-and-card/logged.ts';
import type { Recorded } from '../log-and-card/recorded.ts';
import type { ToRecorder } from './likelihood.ts';
import { lineAt, medianOf, type Point, type RobustLine, robustLine } from './robust-line.ts';

interface Both {
  readonly logged: Logged;
  readonly recorded: Recorded;
}

/** How far a start may be from where a clock puts it and still support that clock. */
const EXPLAINED_MS = 2000;
/** Among any starts of two days some offset is shared by one pair or a few (common practice, no source). */
const LEAST_SHARED = 3;
const SHARED = 0.2;
/** A slope is only trusted if it exceeds its error by this factor. */
export const SURE = 3;

/**
 * The relation of the log's and the recorder's clocks: of several hypotheses (they agree; they differ as
 * pairs of one slate show, steadily or drifting; they differ by what most starts have in common) the first
 * under which the most takes start where a file does.
 */
export function fitClocks(
  takes: readonly Logged[],
  recordings: readonly Recorded[],
  axis: DayAxis,
): ToRecorder {
  const agreeing: ToRecorder = (ms) => ms;
  const starts = takes.flatMap(({ startMs }) => (startMs === undefined ? [] : [startMs]));
  const places = placesOf(recordings, axis);
  if (starts.length === 0 || places.length === 0) return agreeing;
  let best = { clock: agreeing, explained: countExplained(starts, places, agreeing, axis) };
  const consider = (clock: ToRecorder, least = 1): void => {
    const explained = countExplained(starts, places, clock, axis);
    if (explained > best.explained && explained >= least) best = { clock, explained };
  };
  const points = clockPoints(pairsOfOneSlate(takes, recordings), axis);
  if (points.length > 0) {
    consider(shiftedBy(medianOf(points.map(({ y }) => y))));
    const line = robustLine(points);
    if (line && isSteady(line)) consider(followingLine(line, axis));
  }
  if (best.explained * 2 < starts.length)
    consider(
      shiftedBy(commonestOffset(starts, places, axis)),
      Math.max(LEAST_SHARED, SHARED * Math.min(starts.length, places.length)),
    );
  return best.clock;
}

const shiftedBy =
  (offsetMs: number): ToRecorder =>
  (ms) =>
    ms + offsetMs;

export const followingLine =
  (line: RobustLine, axis: DayAxis): ToRecorder =>
  (ms) =>
    ms + lineAt(line, axis.at(ms));

export const isSteady = ({ slope, slopeError }: RobustLine): boolean => Math.abs(slope) > SURE * slopeError;

/** For every pair the log's time, and how much later the recorder's is. */
export const clockPoints = (pairs: readonly Both[], axis: DayAxis): Point[] =>
  pairs.flatMap(({ logged: { startMs }, recorded: { pressMs } }) =>
    startMs === undefined || pressMs === undefined
      ? []
      : [{ x: axis.at(startMs), y: aroundDay(pressMs - startMs, axis.dayMs) }],
  );

/** Pairs whose slate and take are unique on both sides. */
function pairsOfOneSlate(takes: readonly Logged[], recordings: readonly Recorded[]): Both[] {
  const bySlate = new Map<string, Recorded | null>();
  for (const recorded of recordings) {
    const { scene, number } = recorded;
    if (scene === undefined || number === undefined) continue;
    const key = `${scene}/${number}`;
    bySlate.set(key, bySlate.has(key) ? null : recorded);
  }
  const counts = new Map<string, number>();
  const keyOf = ({ scenes, take }: Logged): string => `${scenes[0]}/${take.number}`;
  for (const logged of takes) counts.set(keyOf(logged), (counts.get(keyOf(logged)) ?? 0) + 1);
  return takes.flatMap((logged) => {
    const recorded = bySlate.get(keyOf(logged));
    return recorded && counts.get(keyOf(logged)) === 1 ? [{ logged, recorded }] : [];
  });
}

const placesOf = (recordings: readonly Recorded[], axis: DayAxis): Float64Array =>
  Float64Array.from(
    recordings.flatMap(({ pressMs }) => (pressMs === undefined ? [] : [axis.at(pressMs)])),
  ).sort();

function countExplained(
  starts: readonly number[],
  places: Float64Array,
  clock: ToRecorder,
  axis: DayAxis,
): number {
  let count = 0;
  for (const start of starts) {
    const at = axis.at(clock(start));
    const next = firstFrom(places, at - EXPLAINED_MS);
    if (next < places.length && places[next]! <= at + EXPLAINED_MS) count += 1;
  }
  return count;
}

/** Index of the first value in sorted numbers that is not smaller. */
export function firstFrom(sorted: Float64Array, value: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The start difference that the most pairs of a take and a recording share, within a second. */
function commonestOffset(starts: readonly number[], places: Float64Array, axis: DayAxis): number {
  const some =
    starts.length > 400 ? starts.filter((_, at) => at % Math.ceil(starts.length / 400) === 0) : starts;
  const offsets = new Float64Array(some.length * places.length);
  let count = 0;
  for (const start of some) {
    for (const place of places) {
      offsets[count] = aroundDay(place - axis.at(start), axis.dayMs);
      count += 1;
    }
  }
  offsets.sort();
  let best = { count: 0, from: 0 };
  for (let from = 0, to = 0; from < count; from += 1) {
    while (to < count && offsets[to]! - offsets[from]! <= 1000) to += 1;
    if (to - from > best.count) best = { count: to - from, from };
  }
  return medianOf(offsets.subarray(best.from, best.from + best.count));
}
