import type { Clock } from './ports.ts';

/** The phone's clock at one moment: UTC ms, minutes east of UTC, and ms of a monotonic counter. */
export interface PhoneReading {
  readonly dateMs: number;
  readonly zone: number;
  readonly elapsedMs: number;
  /** The page was visible since the last reading, so the phone did not sleep. The counter stops in sleep. */
  readonly awake: boolean;
}

/** The last answer, the reading behind it, and how far the clock was set ahead by hand so far. */
export interface Steady {
  readonly atMs: number;
  readonly dateMs: number;
  readonly elapsedMs: number;
  readonly aheadMs: number;
  /** The answer minus the phone's time. */
  readonly offset: number;
}

/** The two clocks are read one after the other, and one only in whole milliseconds. */
const JITTER_MS = 20;
/** Smaller steps are trusted as network corrections. */
const STEP_MS = 1000;

/**
 * The phone's time; but while `held` (a take is open), time from the counter if the clock went back, or
 * jumped ahead while the phone was awake.
 */
export function steadyNext(last: Steady | undefined, phone: PhoneReading, held: boolean): Steady {
  const { dateMs, elapsedMs, awake } = phone;
  if (!last) return { atMs: dateMs, dateMs, elapsedMs, aheadMs: 0, offset: 0 };
  const passed = Math.max(0, elapsedMs - last.elapsedMs);
  const moved = dateMs - last.dateMs - passed;
  const wasSetAhead = awake && moved > STEP_MS;
  const offset = held ? last.offset - (moved < -JITTER_MS || wasSetAhead ? moved : 0) : 0;
  const atMs = held ? Math.max(Math.round(dateMs + offset), last.atMs) : dateMs;
  return { atMs, dateMs, elapsedMs, offset, aheadMs: last.aheadMs + (wasSetAhead ? Math.round(moved) : 0) };
}

/** The phone's clock, except that setting it during a take does not change the take's length. */
export function steadyClock(read: () => PhoneReading, takeIsOpen: () => boolean): Clock {
  let last: Steady | undefined;
  return {
    now() {
      const phone = read();
      last = steadyNext(last, phone, takeIsOpen());
      return { atMs: last.atMs, zone: phone.zone, aheadMs: last.aheadMs };
    },
  };
}
