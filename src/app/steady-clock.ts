import type { Clock } from './ports.ts';

/** What the phone shows at one moment: UTC ms, minutes east of UTC, and ms of a counter that nobody can set. */
export interface PhoneReading {
  readonly dateMs: number;
  readonly zone: number;
  readonly elapsedMs: number;
}

/** The last answer of the clock, and where the counter stood then. */
export interface Steady {
  readonly atMs: number;
  readonly elapsedMs: number;
}

/** The two are read one after the other, and one of them in whole milliseconds. */
const JITTER_MS = 20;

/**
 * The next answer: the phone's date, but while `held` (a take is open) never less than the counter says has passed
 * since the last one. Ahead of the counter the date is believed: a counter stands still while a phone sleeps.
 * `steadyNext({ atMs: 5000, elapsedMs: 0 }, { dateMs: 1000, zone: 0, elapsedMs: 700 }, true).atMs` is `5700`.
 */
export function steadyNext(last: Steady | undefined, phone: PhoneReading, held: boolean): Steady {
  const { dateMs, elapsedMs } = phone;
  if (!last || !held) return { atMs: dateMs, elapsedMs };
  const expected = last.atMs + Math.max(0, Math.round(elapsedMs - last.elapsedMs));
  return { atMs: dateMs < expected - JITTER_MS ? expected : Math.max(dateMs, last.atMs), elapsedMs };
}

/** The phone's clock, which a take does not notice being set back: its length stays what it was. */
export function steadyClock(read: () => PhoneReading, takeIsOpen: () => boolean): Clock {
  let last: Steady | undefined;
  return {
    now() {
      const phone = read();
      last = steadyNext(last, phone, takeIsOpen());
      return { atMs: last.atMs, zone: phone.zone };
    },
  };
}
