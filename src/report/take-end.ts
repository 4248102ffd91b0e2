import type { Stamp } from '../day/model.ts';
import { rateOf } from '../time/rate.ts';
import { addFrames, formatTimecode } from '../time/timecode.ts';

/** A length in frames of another rate, to the nearest: 24 frames at 24 are 25 at 25. */
export function framesAt({ frames, rate }: Stamp, at: Stamp['rate']): number {
  if (rate === at) return frames;
  const from = rateOf(rate);
  const to = rateOf(at);
  return Math.round((frames * from.den * to.num) / (from.num * to.den));
}

/** The timecode of the first frame after a take; past midnight it begins again at 0. */
export const endOf = (start: Stamp, length: Stamp): string =>
  formatTimecode(addFrames(start.frames, framesAt(length, start.rate), start.rate), start.rate);
