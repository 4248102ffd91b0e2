import type { DayAxis } from '../log-and-card/label-time.ts';
import type { Logged } from '../log-and-card/logged.ts';
import type { Recorded } from '../log-and-card/recorded.ts';
import type { CardHabits } from './card-habits.ts';
import { firstFrom } from './clock-fit.ts';
import { LEAST_BITS, likelihood, type ToRecorder } from './likelihood.ts';
import { orderBits } from './order-bits.ts';

/** A recording that a take may have, by their indexes in the two lists, and the evidence for it. */
export interface Candidate {
  readonly take: number;
  readonly recording: number;
  readonly bits: number;
}

/** What all pairs have in common. */
export interface Evidence {
  readonly habits: CardHabits;
  readonly toRecorder: ToRecorder;
  readonly axis: DayAxis;
  /** Bits from the names of tracks. */
  readonly tracks: (logged: Logged, recorded: Recorded) => number;
}

/** Up to so many pairs are all weighed; of more, those with a name, a slate or about a start in common. */
const ALL_PAIRS = 40_000;

/**
 * Every pair of `LEAST_BITS` or more, less those that are far worse than another of the take and of the
 * recording. `recordings` are in the order in which they were recorded; where a start is missing the order
 * counts as well.
 */
export function candidatePairs(
  takes: readonly Logged[],
  recordings: readonly Recorded[],
  evidence: Evidence,
): Candidate[] {
  const isTimed = ({ startMs }: { readonly startMs: number | undefined }): boolean => startMs !== undefined;
  const pairs = takes.every(isTimed) && recordings.every(isTimed);
  const found =
    pairs && takes.length * recordings.length > ALL_PAIRS
      ? lookedUp(takes, recordings, evidence)
      : inOrder(takes, recordings, evidence);
  return worthKeeping(found.filter(({ bits }) => bits >= LEAST_BITS));
}

const weigh = (logged: Logged, recorded: Recorded, { habits, toRecorder, axis, tracks }: Evidence): number =>
  likelihood(logged, recorded, habits, toRecorder, axis.dayMs) + tracks(logged, recorded);

function inOrder(takes: readonly Logged[], recordings: readonly Recorded[], evidence: Evidence): Candidate[] {
  const weights = takes.map((logged) => recordings.map((recorded) => weigh(logged, recorded, evidence)));
  const isUntimed = takes.map(({ startMs }) => startMs === undefined);
  const lacks = (take: number, recording: number): boolean =>
    isUntimed[take]! || recordings[recording]!.startMs === undefined;
  const order =
    isUntimed.includes(true) || recordings.some(({ startMs }) => startMs === undefined)
      ? orderBits(weights.map((row) => row.map((bits) => bits - LEAST_BITS)))
      : null;
  return weights.flatMap((row, take) =>
    row.map((bits, recording) => ({
      take,
      recording,
      bits: bits + (order && lacks(take, recording) ? order[take]![recording]! : 0),
    })),
  );
}

function lookedUp(
  takes: readonly Logged[],
  recordings: readonly Recorded[],
  evidence: Evidence,
): Candidate[] {
  const find = recordingFinder(recordings, evidence.axis);
  return takes.flatMap((logged, take) =>
    [...find(logged, evidence.toRecorder)]
      .sort((a, b) => a - b)
      .map((recording) => ({ take, recording, bits: weigh(logged, recordings[recording]!, evidence) })),
  );
}

/** So much worse than the best of both its sides, a pair is in no fit; without it takes are fitted separately. */
const HOPELESS_BITS = 12;

function worthKeeping(found: readonly Candidate[]): Candidate[] {
  const ofTake = new Map<number, number>();
  const ofRecording = new Map<number, number>();
  const note = (best: Map<number, number>, at: number, bits: number): void => {
    best.set(at, Math.max(bits, best.get(at) ?? bits));
  };
  for (const { take, recording, bits } of found) {
    note(ofTake, take, bits);
    note(ofRecording, recording, bits);
  }
  return found.filter(
    ({ take, recording, bits }) =>
      bits > Math.min(ofTake.get(take)!, ofRecording.get(recording)!) - HOPELESS_BITS,
  );
}

/** At a minute a start speaks against a pair. */
const CLOSE_START_MS = 60_000;

function recordingFinder(
  recordings: readonly Recorded[],
  axis: DayAxis,
): (logged: Logged, toRecorder: ToRecorder) => Set<number> {
  const byKey = new Map<string, number[]>();
  const timed: { readonly at: number; readonly recording: number }[] = [];
  for (const [at, recorded] of recordings.entries()) {
    for (const key of keysOf(recorded)) {
      const list = byKey.get(key);
      if (list) list.push(at);
      else byKey.set(key, [at]);
    }
    for (const ms of new Set([recorded.startMs, recorded.pressMs])) {
      if (ms !== undefined) timed.push({ at: axis.at(ms), recording: at });
    }
  }
  timed.sort((a, b) => a.at - b.at);
  const places = Float64Array.from(timed, ({ at }) => at);
  return (logged, toRecorder) => {
    const found = new Set<number>();
    for (const key of wantedKeys(logged)) for (const at of byKey.get(key) ?? []) found.add(at);
    if (logged.startMs === undefined) return found;
    const at = axis.at(toRecorder(logged.startMs));
    // Just before the cut of the axis is also just after it.
    for (const middle of [at, at - axis.dayMs, at + axis.dayMs]) {
      for (let next = firstFrom(places, middle - CLOSE_START_MS); next < places.length; next += 1) {
        if (places[next]! > middle + CLOSE_START_MS) break;
        found.add(timed[next]!.recording);
      }
    }
    return found;
  };
}

function* keysOf({ stems, shortStems, scene, number }: Recorded): Generator<string> {
  for (const stem of new Set([...stems, ...shortStems])) yield `name ${stem}`;
  if (scene !== undefined) yield `slate ${scene}/${number ?? ''}`;
}

function* wantedKeys({ stems, scenes, looseScenes, take }: Logged): Generator<string> {
  for (const stem of stems) yield `name ${stem}`;
  for (const scene of scenes) yield `slate ${scene}/`;
  for (const scene of [...scenes, ...looseScenes]) yield `slate ${scene}/${take.number}`;
}
