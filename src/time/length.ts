import { fail, ok, type Result } from '../shared/result.ts';
import { type RateId, rateOf } from './rate.ts';
import { mulDivFloor, requireWhole } from './whole-number.ts';

// A length is real time to the second, as on a stopwatch. An hour of labels lasts 3603.6 s at 23.976, so
// counting in labels would differ. Formatting and parsing here are inverses.

const LONGEST_S = 86_400;
const two = (value: number): string => String(value).padStart(2, '0');

/** Whole seconds as a length: `'0:07'`, `'1:52'`, `'1:02:10'`. */
export function formatSeconds(seconds: number): string {
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours > 0 ? `${hours}:${two(minutes)}:${two(seconds % 60)}` : `${minutes}:${two(seconds % 60)}`;
}

/**
 * Real time a take lasted, to the nearest second, half a second up: '0:07', '1:52', '1:02:10'. Throws below zero.
 * `formatLength(2880, '23.976')` is '2:00', for 120.12 seconds.
 */
export function formatLength(frames: number, rate: RateId): string {
  if (requireWhole(frames, 'frames') < 0) throw new RangeError('A length cannot be negative');
  const { num, den } = rateOf(rate);
  return formatSeconds(mulDivFloor(2 * frames * den + num, 1, 2 * num));
}

/**
 * Parses a length as printed: minutes and seconds (`'1:52'`), with hours (`'1:02:10'`), or bare seconds
 * (`'45'`). Returns the nearest count of frames: `parseLength('10:00', '23.976')` is ok 14386.
 */
export function parseLength(typed: string, rate: RateId): Result<number> {
  const groups = typed.slice(0, 100).normalize('NFKC').trim().split(/[:.;]/);
  const [first, ...rest] = groups;
  const isRead =
    groups.length <= 3 && /^\d{1,6}$/.test(first!) && rest.every((group) => /^[0-5]?\d$/.test(group));
  if (!isRead) return fail({ code: 'length-unread', typed });
  const seconds = groups.reduce((sum, group) => sum * 60 + Number(group), 0);
  if (seconds > LONGEST_S) return fail({ code: 'length-too-long', typed });
  const { num, den } = rateOf(rate);
  return ok(mulDivFloor(2 * seconds * num + den, 1, 2 * den));
}
