import { fail, ok, type Result } from '../../shared/result.ts';

/** Lower frequencies are taken for typing errors. */
export const LOWEST_KHZ = 1_000;
/** Higher frequencies are taken for typing errors (kHz typed instead of MHz). */
export const HIGHEST_KHZ = 100_000_000;

export type FrequencyProblem =
  | { readonly code: 'frequency-not-whole'; readonly khz: number }
  | { readonly code: 'frequency-not-positive'; readonly khz: number }
  | { readonly code: 'frequency-too-low'; readonly khz: number; readonly lowestKhz: number }
  | { readonly code: 'frequency-too-high'; readonly khz: number; readonly highestKhz: number };

export type MhzProblem =
  | FrequencyProblem
  | { readonly code: 'frequency-empty' }
  | { readonly code: 'frequency-unreadable'; readonly text: string }
  | { readonly code: 'frequency-finer-than-khz'; readonly text: string };

/** A frequency as a whole number of kHz between 1 MHz and 100 GHz. `checkKhz(0)` → `frequency-not-positive` */
export function checkKhz(khz: number): Result<number, FrequencyProblem> {
  // Problems reach the screen, which must never show NaN or Infinity.
  if (!Number.isSafeInteger(khz))
    return fail({ code: 'frequency-not-whole', khz: Number.isFinite(khz) ? khz : 0 });
  if (khz <= 0) return fail({ code: 'frequency-not-positive', khz });
  if (khz < LOWEST_KHZ) return fail({ code: 'frequency-too-low', khz, lowestKhz: LOWEST_KHZ });
  if (khz > HIGHEST_KHZ) return fail({ code: 'frequency-too-high', khz, highestKhz: HIGHEST_KHZ });
  return ok(khz);
}

const MHZ = /^([+-]?)(\d{1,9})(?:[.,](\d*))?(?:\s*mhz)?$/i;

/**
 * Typed MHz, with a point or a comma, as whole kHz; parsed digit by digit to avoid binary fractions.
 * `parseMhz('470,1')` → ok 470100; `parseMhz('470.1255')` → `frequency-finer-than-khz`
 */
export function parseMhz(text: string): Result<number, MhzProblem> {
  const trimmed = text.trim();
  if (trimmed === '') return fail({ code: 'frequency-empty' });
  const match = MHZ.exec(trimmed);
  if (!match) return fail({ code: 'frequency-unreadable', text });
  const [, sign, whole = '', fraction = ''] = match;
  if (/[1-9]/.test(fraction.slice(3))) return fail({ code: 'frequency-finer-than-khz', text });
  const khz = Number(whole) * 1000 + Number(fraction.slice(0, 3).padEnd(3, '0'));
  return checkKhz(sign === '-' && khz > 0 ? -khz : khz);
}

/** Typed MHz where the frequency may also be removed: an empty field is null. */
export const parseMhzOrNone = (text: string): Result<number | null, MhzProblem> =>
  text.trim() === '' ? ok(null) : parseMhz(text);

/** Whole kHz as MHz with three places, which `parseMhz` reads back. `formatMhz(470_100)` → '470.100' */
export const formatMhz = (khz: number): string =>
  `${khz < 0 ? '-' : ''}${Math.floor(Math.abs(khz) / 1000)}.${String(Math.abs(khz) % 1000).padStart(3, '0')}`;
