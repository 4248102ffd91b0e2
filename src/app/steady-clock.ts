import type { Clock } from './ports.ts';

/** What the phone shows at one moment: UTC ms, minutes east of UTC, and ms of a counter that nobody can set. */
export interface PhoneReading {
  readonly dateMs: number;
  readonly zone: number;
  readonly elapsedMs: number;
  /** The page was in view since the reading before, so the phone did not sleep; a counter stands still in sleep. */
  readonly awake: boolean;
}

/** The last answer, what it was read from, and how far the date was moved ahead by hand since the window opened. */
export interface Steady {
  readonly atMs: number;
  readonly dateMs: number;
  readonly elapsedMs: number;
  readonly aheadMs: number;
  /** How far the answer is from the date. */
  readonly offset: number;
}

/** The two are read one after the other, and one of them in whole milliseconds. */
const JITTER_MS = 20;
/** A clock that a network puts right by less than this is believed. */
const STEP_MS = 1000;

/**
 * The next answer: the phone's date, but while `held` (a take is open) what the counter says has passed since the last
 * one, where the date went back, or went ahead in a phone that was awake.
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

/** The phone's clock, which a take does not notice being set: its length stays what it was. */
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
