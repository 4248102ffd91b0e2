import { droppedAt, frameOfLabel, labelOfFrame } from './label.ts';
import { type RateId, rateOf } from './rate.ts';
import { addFrames, msToFrames } from './timecode.ts';
import { modulo, mulDivCeil, requireWhole, wholeMs } from './whole-number.ts';

/** The phone's clock tied to the recorder's timecode: label `frames` appeared at UTC ms `atMs`. */
export interface FollowedClock {
  readonly frames: number;
  readonly rate: RateId;
  readonly atMs: number;
}

/** The frame showing at UTC ms `nowMs`, wrapped at 24 hours; times before `atMs` count backwards. */
export const timecodeAt = ({ frames, rate, atMs }: FollowedClock, nowMs: number): number =>
  addFrames(frames, msToFrames(wholeMs(nowMs) - wholeMs(atMs), rate), rate);

/**
 * The next label on a whole second to tap on, at least `leadMs` away, with the first millisecond at which it
 * should show. Its frames are 00, or 02 or 04 where drop-frame skips those. At 25, at 10:00:00:05 with 2 s to
 * go: 10:00:03:00.
 */
export function nextWholeSecond(clock: FollowedClock, nowMs: number, leadMs = 2000): FollowedClock {
  const rate = rateOf(clock.rate);
  const msPerFrames = rate.den * 1000;
  const atMs = wholeMs(clock.atMs);
  const leadFrames = mulDivCeil(wholeMs(nowMs) + wholeMs(leadMs) - atMs, rate.num, msPerFrames);
  const label = labelOfFrame(addFrames(clock.frames, leadFrames, clock.rate), clock.rate);
  const startsSecond = label.frames === droppedAt(rate, label.minutes, label.seconds);
  const wait = leadFrames + (startsSecond ? 0 : rate.base - label.frames);
  const frames = addFrames(clock.frames, wait, clock.rate);
  return { frames, rate: clock.rate, atMs: atMs + mulDivCeil(wait, msPerFrames, rate.num) };
}

/**
 * A clock for before the first tap: time of day in a zone `zoneMinutes` east of UTC (330 for +05:30), as a
 * label at this rate. At 25, half a second past 13:00:00 local is 13:00:00:12.
 */
export function timeOfDayClock(nowMs: number, zoneMinutes: number, rate: RateId): FollowedClock {
  const atMs = wholeMs(nowMs);
  const msOfDay = modulo(atMs + requireWhole(zoneMinutes, 'zone minutes') * 60_000, 86_400_000);
  const totalSeconds = Math.floor(msOfDay / 1000);
  const hours = Math.floor(totalSeconds / 3600);
  const minutes = Math.floor(totalSeconds / 60) % 60;
  const seconds = totalSeconds % 60;
  const { base } = rateOf(rate);
  const leftOut = droppedAt(rateOf(rate), minutes, seconds);
  // Spreads a second's labels evenly over it, so hours, minutes and seconds match the phone's.
  const frames = leftOut + Math.floor(((msOfDay % 1000) * (base - leftOut)) / 1000);
  return { frames: frameOfLabel({ hours, minutes, seconds, frames }, rate), rate, atMs };
}
