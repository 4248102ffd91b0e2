import { framesPerDay, type RateId, rateOf } from '../../time/rate.ts';
import type { Quantity } from '../quantity.ts';

/** A clock's tolerance in ppm, or the sum of two. */
export const tolerance = (value: number): Quantity => ({ field: 'ppm', value, min: 0, max: 10_000 });

/** The length of one frame in ms, a fraction at most rates. Example: 40 at 25. */
export function frameMs(rate: RateId): number {
  const { num, den } = rateOf(rate);
  return (1000 * den) / num;
}

/** Below this no recording is long enough to show it, and the date computed would overflow. */
export const LEAST_PPM = 1e-6;

/**
 * How far timecode falls behind real time, in ms for each hour and each 24 h of labels (SMPTE ST 12-1
 * counting); negative when ahead. Example: 23.976 is 3600 behind an hour, 29.97 DF 3.6 ahead.
 */
export function labelsBehindClock(rate: RateId): { readonly hourMs: number; readonly dayMs: number } {
  const { num, den } = rateOf(rate);
  const dayMs = (framesPerDay(rate) * 1000 * den) / num - 86_400_000;
  return { hourMs: dayMs / 24, dayMs };
}
