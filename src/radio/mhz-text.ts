import { checkKhz, type FrequencyProblem } from '../facts/kinds/frequency.ts';
import { fail, ok, type Result } from '../shared/result.ts';

export type MhzProblem =
  | FrequencyProblem
  | { readonly code: 'frequency-empty' }
  | { readonly code: 'frequency-unreadable'; readonly text: string }
  | { readonly code: 'frequency-finer-than-khz'; readonly text: string };

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
