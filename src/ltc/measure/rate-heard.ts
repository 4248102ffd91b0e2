import type { RateId } from '../../time/rate.ts';
import type { Base } from '../frames/successor.ts';
import type { Line } from './line-fit.ts';

/** How far a phone's own audio clock may be off, in parts per million: from memory, no source. */
export const PHONE_PPM = 50;

/** The rates that differ in speed, in frames a second. 24 and 23.976 are 1,000 ppm apart, and nothing is closer. */
const SPEEDS = [
  { fps: 24_000 / 1001, base: 24, plain: '23.976', drop: undefined },
  { fps: 24, base: 24, plain: '24', drop: undefined },
  { fps: 25, base: 25, plain: '25', drop: undefined },
  { fps: 30_000 / 1001, base: 30, plain: '29.97', drop: '29.97DF' },
  { fps: 30, base: 30, plain: '30', drop: '30DF' },
] as const;

/** What was counted, beside what was timed. */
export interface Counted {
  /** Labels a second; undefined until a second has been heard to end. */
  readonly base: Base | undefined;
  readonly dropFlag: boolean;
  /** Whether labels were left out at a minute; undefined until one has been heard where drop-frame would. */
  readonly skips: boolean | undefined;
}

export type RateTrouble =
  /** No rate runs at this speed: a tape that is shuttled, or a box with a wrong clock. */
  | 'no-such-speed'
  /** Counts as many labels a second as another rate than the one it runs at. */
  | 'counts-another'
  /** The flag says drop-frame and the count does not leave labels out, or the other way round. */
  | 'flag-and-count-differ';

export interface RateHeard {
  readonly fps: number;
  /** How far that may be wrong, in ppm: three standard errors of the fit, and the phone's own clock. */
  readonly ppm: number;
  /** The only rate that fits; undefined while several do, or where none does. */
  readonly rate: RateId | undefined;
  readonly trouble: RateTrouble | undefined;
}

/** The rate from the length of a frame in samples, measured by a line through the frames' starts. */
export function rateHeard({ slope, slopeError }: Line, sampleRate: number, counted: Counted): RateHeard {
  const fps = sampleRate / slope;
  const ppm = PHONE_PPM + 3e6 * (slopeError / slope);
  const near = SPEEDS.filter((speed) => Math.abs(fps / speed.fps - 1) * 1e6 <= ppm);
  const [only] = near;
  if (!only) return { fps, ppm, rate: undefined, trouble: 'no-such-speed' };
  if (near.length > 1) return { fps, ppm, rate: undefined, trouble: undefined };
  const { base, dropFlag, skips = dropFlag } = counted;
  const countsOther = base !== undefined && base !== only.base;
  const differ = skips !== dropFlag;
  return {
    fps,
    ppm,
    rate: dropFlag || skips ? (only.drop ?? only.plain) : only.plain,
    trouble: countsOther ? 'counts-another' : differ ? 'flag-and-count-differ' : undefined,
  };
}

/**
 * Seconds until 24 and 23.976 are told apart, where frames stray by so many samples: until three standard errors
 * and the phone's clock are less than half of what lies between. `secondsToTell(0.5, 48000)` is under 1.
 */
export function secondsToTell(spread: number, sampleRate: number): number {
  const fps = 24;
  const allowed = (1_000_000 / 1001 / 2 - PHONE_PPM) / 3e6;
  // The standard error of a slope through n points a frame apart is spread × √(12 / n³).
  const frames = Math.cbrt(12 * ((spread * fps) / sampleRate / allowed) ** 2);
  return Math.max(3, Math.ceil(frames)) / fps;
}
