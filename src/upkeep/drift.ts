import { fail, ok, type Result } from '../shared/result.ts';
import { framesPerDay, type RateId, rateOf } from '../time/rate.ts';
import { firstBadQuantity, type Quantity } from './quantity.ts';

/** A clock's tolerance in ppm, or the sum of two. */
export const tolerance = (value: number): Quantity => ({ field: 'ppm', value, min: 0, max: 10_000 });

/** The worst two free-running clocks can part, in ppm: the sum of both. Example: 1 and 5 give 6. */
export function ppmApart(onePpm: number, otherPpm: number): Result<number> {
  const problem = firstBadQuantity([tolerance(onePpm), tolerance(otherPpm)]);
  return problem ? fail(problem) : ok(onePpm + otherPpm);
}

/** The length of one frame in ms, a fraction at most rates. Example: 40 at 25. */
export function frameMs(rate: RateId): number {
  const { num, den } = rateOf(rate);
  return (1000 * den) / num;
}

/** Below this no recording is long enough to show it, and the moment it would show lies past any date. */
export const LEAST_PPM = 1e-6;

/**
 * Frames (a fraction) that a clock off by `ppm` gains or loses in `elapsedMs`.
 * Example: 1 ppm for an hour at 25 is 0.09.
 */
export function driftFrames(ppm: number, elapsedMs: number, rate: RateId): Result<number> {
  const elapsed = { field: 'elapsedMs', value: elapsedMs, min: 0, max: 1e12 };
  const problem = firstBadQuantity([tolerance(ppm), elapsed]);
  return problem ? fail(problem) : ok((ppm * 1e-6 * elapsedMs) / frameMs(rate));
}

/**
 * Hours until a clock off by `ppm` has parted by `frames`. A clock at 0 ppm never does: `never-drifts`.
 * Example: 1 ppm at 25 takes 11.11 h to one frame.
 */
export function hoursToDrift(ppm: number, rate: RateId, frames = 1): Result<number> {
  const problem = firstBadQuantity([tolerance(ppm), { field: 'frames', value: frames, min: 0.01, max: 1e6 }]);
  if (problem) return fail(problem);
  if (ppm < LEAST_PPM) return fail({ code: 'never-drifts' });
  return ok((frames * frameMs(rate) * 1e6) / (ppm * 3_600_000));
}

/**
 * How far timecode labels run behind the clock on the wall, in ms for each hour and each 24 h of labels
 * (SMPTE ST 12-1 counting); negative when ahead. Example: 23.976 is 3600 behind an hour, 29.97 DF 3.6 ahead.
 */
export function labelsBehindClock(rate: RateId): { readonly hourMs: number; readonly dayMs: number } {
  const { num, den } = rateOf(rate);
  const dayMs = (framesPerDay(rate) * 1000 * den) / num - 86_400_000;
  return { hourMs: dayMs / 24, dayMs };
}
