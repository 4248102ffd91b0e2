import type { DayAxis } from '../log-and-card/label-time.ts';
import type { Logged } from '../log-and-card/logged.ts';
import type { Recorded } from '../log-and-card/recorded.ts';
import { firstFrom } from './clock-fit.ts';
import { CLOSE_START_MS, LEAST_POINTS, type Score, scorePair, type ToRecorder } from './score-pair.ts';

/** A recording that a take may have, by their indexes in the two lists. */
export interface Candidate {
  readonly take: number;
  readonly recording: number;
  readonly score: Score;
}

/**
 * Every pair of `LEAST_POINTS` or more. Pairs are looked up by name, by slate and by start; pairs that share
 * none of these cannot score that much.
 */
export function candidatePairs(
  takes: readonly Logged[],
  recordings: readonly Recorded[],
  toRecorder: ToRecorder,
  axis: DayAxis,
): Candidate[] {
  const find = recordingFinder(recordings, axis);
  return takes.flatMap((logged, take) => {
    const found = [...find(logged, toRecorder)].sort((a, b) => a - b);
    return found.flatMap((recording) => {
      const score = scorePair(logged, recordings[recording]!, toRecorder, axis.dayMs);
      return score.points >= LEAST_POINTS ? [{ take, recording, score }] : [];
    });
  });
}

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
