import type { HearingProblem } from '../../shared/hearing-problem.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import { framesPerDay, type RateId, rateOf } from '../../time/rate.ts';
import { PHONE_PPM } from './rate-heard.ts';

/** One box as heard: it showed the start of frame `frames` (since 00:00:00:00) at `atMs` of the phone's clock. */
export interface BoxHeard {
  readonly frames: number;
  readonly rate: RateId;
  readonly atMs: number;
  /** How far `atMs` may be wrong, but for the delay that every listening of this phone has. */
  readonly doubtMs: number;
}

/** How far the second box is ahead of the first; negative where it is behind. */
export interface Offset {
  readonly frames: number;
  readonly ms: number;
  /** How far that may be wrong, either way. */
  readonly doubtFrames: number;
  readonly doubtMs: number;
}

const frameMs = (rate: RateId): number => (1000 * rateOf(rate).den) / rateOf(rate).num;

/**
 * The offset between two boxes that one phone has heard one after the other. The phone's own delay is in both and
 * cancels; its clock may be off by 50 ppm over the time between, 3 ms a minute. Fails on boxes that run at
 * different rates.
 */
export function offsetBetween(one: BoxHeard, other: BoxHeard): Result<Offset, HearingProblem> {
  if (one.rate !== other.rate) return fail({ code: 'heard-rates-differ', rates: [one.rate, other.rate] });
  const length = frameMs(one.rate);
  const day = framesPerDay(one.rate);
  const betweenMs = other.atMs - one.atMs;
  const ahead = other.frames - one.frames - betweenMs / length;
  const frames = ahead - day * Math.round(ahead / day);
  const doubtMs = Math.hypot(one.doubtMs, other.doubtMs) + (PHONE_PPM * Math.abs(betweenMs)) / 1e6;
  return ok({ frames, ms: frames * length, doubtFrames: doubtMs / length, doubtMs });
}

/** An offset of two boxes, and when they were heard. */
export interface Compared extends Offset {
  readonly atMs: number;
}

export interface Drift {
  /** How much faster the second box runs than the first, in parts per million. */
  readonly ppm: number;
  readonly doubtPpm: number;
  /** When they will be a frame apart if it goes on so; undefined where no drift is seen beyond the doubt. */
  readonly dueAtMs: number | undefined;
}

/** The drift between two comparisons of the same boxes. 1 ms in an hour is 0.28 ppm. Fails if both are of one moment. */
export function driftBetween(first: Compared, later: Compared, rate: RateId): Result<Drift, HearingProblem> {
  const passedMs = later.atMs - first.atMs;
  if (!(passedMs > 0)) return fail({ code: 'heard-too-soon' });
  const ppm = ((later.ms - first.ms) / passedMs) * 1e6;
  const doubtPpm = (Math.hypot(first.doubtMs, later.doubtMs) / passedMs) * 1e6;
  return ok(driftFrom({ ppm, doubtPpm }, { atMs: later.atMs, offMs: later.ms }, rate));
}

/** Two boxes that are so far apart and drift so: with the moment at which they are a frame apart. */
export function driftFrom(
  { ppm, doubtPpm }: Pick<Drift, 'ppm' | 'doubtPpm'>,
  { atMs, offMs }: { readonly atMs: number; readonly offMs: number },
  rate: RateId,
): Drift {
  const isSeen = Math.abs(ppm) > doubtPpm;
  const limit = frameMs(rate) * (ppm > 0 ? 1 : -1);
  const leftMs = Math.max(0, ((limit - offMs) / ppm) * 1e6);
  return { ppm, doubtPpm, dueAtMs: isSeen ? Math.round(atMs + leftMs) : undefined };
}
