import type { Stamp } from '../../day/model.ts';
import { framesPerDay, type RateId, rateOf } from '../../time/rate.ts';

// Times of day are compared as real milliseconds since 00:00:00:00, to which both sample counts and frame
// counts at exact rates convert. They wrap at a day of labels, which at 1000/1001 rates is not a clock day.

/** Real milliseconds, with fractions, of a count of frames. */
export const stampMs = ({ frames, rate }: Stamp): number => {
  const { num, den } = rateOf(rate);
  return (frames * den * 1000) / num;
};

/** Real milliseconds, with fractions, of a count of samples. */
export const samplesMs = (samples: number, sampleRate: number): number => (samples / sampleRate) * 1000;

/** Whole frames nearest to real milliseconds, negative ones too. */
export function nearestFrames(ms: number, id: RateId): number {
  const { num, den } = rateOf(id);
  return Math.round((ms * num) / (den * 1000));
}

/** The length of a day of labels. */
export const labelDayMs = (rate: RateId): number => stampMs({ frames: framesPerDay(rate), rate });

/** The shortest distance around the clock: from minus half a day to half a day. */
export function aroundDay(ms: number, dayMs: number): number {
  const rest = ms - dayMs * Math.round(ms / dayMs);
  return rest === -dayMs / 2 ? dayMs / 2 : rest;
}

/** Times of day as a line: a night past midnight is cut where nothing was recorded for longest. */
export interface DayAxis {
  readonly dayMs: number;
  /** Milliseconds since the cut, from 0 to a day. */
  readonly at: (ms: number) => number;
}

export function dayAxis(times: readonly number[], dayMs: number): DayAxis {
  const wrap = (ms: number): number => ((ms % dayMs) + dayMs) % dayMs;
  const sorted = times.map(wrap).sort((a, b) => a - b);
  let origin = sorted[0] ?? 0;
  let widest = sorted.length > 0 ? origin + dayMs - sorted.at(-1)! : 0;
  for (let at = 1; at < sorted.length; at += 1) {
    const gap = sorted[at]! - sorted[at - 1]!;
    if (gap <= widest) continue;
    widest = gap;
    origin = sorted[at]!;
  }
  // The cut is in the middle of the gap, so that something slightly early still comes first.
  const cut = origin - widest / 2;
  return { dayMs, at: (ms) => wrap(ms - cut) };
}
