import { fail, ok, type Result } from '../../shared/result.ts';
import type { Moment } from '../command.ts';

const MINUTE_MS = 60_000;
const DAY_MS = 86_400_000;

/**
 * A typed clock time, in minutes after midnight: `'13:30'`, `'13.30'`, `'1330'` and `'7'` are accepted. An
 * empty field is null. Fails with `clock-time-unread`.
 */
export function readClockTime(typed: string): Result<number | null> {
  const text = typed.trim();
  if (text === '') return ok(null);
  const [, hours, minutes = '0'] =
    /^(\d{1,2})(?:\s*[:.h]\s*(\d{2})?)?$/.exec(text) ?? /^(\d{1,2})(\d{2})$/.exec(text) ?? [];
  if (hours === undefined || Number(hours) > 23 || Number(minutes) > 59)
    return fail({ code: 'clock-time-unread', typed });
  return ok(Number(hours) * 60 + Number(minutes));
}

/** Midnight of the day at `atMs` in that zone, as UTC ms. */
const midnight = ({ atMs, zone }: Moment): number => {
  const there = atMs + zone * MINUTE_MS;
  return there - (((there % DAY_MS) + DAY_MS) % DAY_MS) - zone * MINUTE_MS;
};

/** The first moment from `fromMs` on when the clock shows these minutes. */
export function nextMs(minutes: number, fromMs: number, zone: number): number {
  const sameDay = midnight({ atMs: fromMs, zone }) + minutes * MINUTE_MS;
  return sameDay < fromMs ? sameDay + DAY_MS : sameDay;
}

/** The last moment up to `byMs` when the clock shows these minutes. */
export const lastMs = (minutes: number, byMs: number, zone: number): number =>
  nextMs(minutes, byMs - DAY_MS + 1, zone);

/** The moment nearest to now when the clock shows these minutes. At 20:00, 07:00 is tomorrow's. */
export const nearestMs = (minutes: number, { atMs, zone }: Moment): number =>
  lastMs(minutes, atMs + DAY_MS / 2, zone);

export const showsAt = (minutes: number, atMs: number, zone: number): boolean =>
  lastMs(minutes, atMs, zone) > atMs - MINUTE_MS;
