import type { DayAxis } from '../log-and-card/label-time.ts';
import { clockPoints, isSteady } from '../pairing/clock-fit.ts';
import { medianOf, robustLine } from '../pairing/robust-line.ts';
import type { CheckedPair } from './checked-pair.ts';

/** File and log count at rates that are 1001/1000 apart. */
export interface Pulldown {
  /** In the starts, or in the lengths of long takes. */
  readonly by: 'starts' | 'lengths';
  /** Times of the file divided by those of the log. */
  readonly ratio: '1001/1000' | '1000/1001';
  readonly ppm: number;
  readonly pairs: number;
}

const SLOPE = 0.001;
/** Ordinary crystals are at most 50 ppm off (common practice, no source), far from 1000 ppm. */
const SLOPE_SLACK = 0.0001;
const LONG_MS = 180_000;
const LEAST_PAIRS = 3;

/**
 * The trap of 1001/1000: 24 against 23.976, 30 against 29.97, 48048 against 48000. Starts then drift apart by
 * 3.6 s an hour, and lengths by 60 ms a minute. Null if neither is certain.
 */
export function pulldownBetween(pairs: readonly CheckedPair[], axis: DayAxis): Pulldown | null {
  const points = clockPoints(pairs, axis);
  const line = robustLine(points);
  if (line && points.length >= LEAST_PAIRS && isSteady(line) && line.slopeError < SLOPE_SLACK) {
    const found = pulldown('starts', line.slope, points.length);
    if (found) return found;
  }
  const ratios = pairs.flatMap(({ logged, recorded }) =>
    logged.lengthMs === undefined || recorded.lengthMs === undefined || logged.lengthMs < LONG_MS
      ? []
      : [recorded.lengthMs / logged.lengthMs - 1],
  );
  if (ratios.length < LEAST_PAIRS) return null;
  const middle = medianOf(ratios);
  const spread = medianOf(ratios.map((ratio) => Math.abs(ratio - middle)));
  return spread < SLOPE_SLACK ? pulldown('lengths', middle, ratios.length) : null;
}

const pulldown = (by: Pulldown['by'], slope: number, pairs: number): Pulldown | null =>
  Math.abs(Math.abs(slope) - SLOPE) > SLOPE_SLACK
    ? null
    : { by, ratio: slope > 0 ? '1001/1000' : '1000/1001', ppm: slope * 1e6, pairs };
