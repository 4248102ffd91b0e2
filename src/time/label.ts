import { framesPerDay, type Rate, type RateId, rateOf } from './rate.ts';
import { modulo, requireWhole } from './whole-number.ts';

/** A timecode label in fields: 0–23, 0–59, 0–59, and 0 to the rate's base less one. */
export interface Label {
  readonly hours: number;
  readonly minutes: number;
  readonly seconds: number;
  readonly frames: number;
}

/** How many labels are skipped at the start of this second: second 0 of most minutes. */
export const droppedAt = ({ dropped }: Rate, minutes: number, seconds: number): number =>
  seconds === 0 && minutes % 10 !== 0 ? dropped : 0;

/** Frames from 00:00:00:00 to a label that exists at this rate. 00:01:00;02 at 29.97 DF is 1800. */
export function frameOfLabel({ hours, minutes, seconds, frames }: Label, id: RateId): number {
  const { base, dropped } = rateOf(id);
  const minutesOfDay = hours * 60 + minutes;
  const labelsLeftOut = dropped * (minutesOfDay - Math.floor(minutesOfDay / 10));
  return (minutesOfDay * 60 + seconds) * base + frames - labelsLeftOut;
}

/** The label's number as if none were skipped, so that the base alone divides it. */
function countWithDropped(frame: number, { base, dropped }: Rate): number {
  if (dropped === 0) return frame;
  const perTenMinutes = 600 * base - 9 * dropped;
  const perMinute = 60 * base - dropped;
  const tens = Math.floor(frame / perTenMinutes);
  const rest = frame % perTenMinutes;
  // Without this test the first `dropped` frames of each ten minutes would floor to minus one minute.
  const minutes = rest > dropped ? Math.floor((rest - dropped) / perMinute) : 0;
  return frame + 9 * dropped * tens + dropped * minutes;
}

/** The label of a frame counted from 00:00:00:00, wrapped into one day of labels, negative counts too. */
export function labelOfFrame(frames: number, id: RateId): Label {
  const rate = rateOf(id);
  const count = countWithDropped(modulo(requireWhole(frames, 'frames'), framesPerDay(id)), rate);
  const totalSeconds = Math.floor(count / rate.base);
  return {
    hours: Math.floor(totalSeconds / 3600),
    minutes: Math.floor(totalSeconds / 60) % 60,
    seconds: totalSeconds % 60,
    frames: count % rate.base,
  };
}

/**
 * The frame that shows the same digits at another rate, or the nearest that exists within that second:
 * 10:00:00:24 at 25 is 10:00:00:23 at 23.976, and 10:01:00:00 at 29.97 is 10:01:00;02 at 29.97 DF.
 */
export function sameLabel(frames: number, from: RateId, to: RateId): number {
  const label = labelOfFrame(frames, from);
  const rate = rateOf(to);
  const first = droppedAt(rate, label.minutes, label.seconds);
  return frameOfLabel({ ...label, frames: Math.max(first, Math.min(label.frames, rate.base - 1)) }, to);
}
