import { fail, ok, type Result } from '../shared/result.ts';

const LOWEST_KHZ = 10_000;
const HIGHEST_KHZ = 10_000_000;

/**
 * A carrier as people type it, in MHz, as whole kHz: `'606.25'` is 606250. Nothing typed is null. Fails with
 * `frequency-not-read`, or `frequency-too-fine` below a kHz, or `frequency-out-of-range` outside 10 MHz to 10 GHz.
 */
export function readMegahertz(typed: string): Result<number | null> {
  const text = typed.trim().replace(/\s*mhz$/i, '');
  if (text === '') return ok(null);
  const [, whole, part = ''] = /^(\d{1,6})(?:[.,](\d{0,12}))?$/.exec(text) ?? [];
  if (whole === undefined) return fail({ code: 'frequency-not-read', typed });
  if (/[1-9]/.test(part.slice(3))) return fail({ code: 'frequency-too-fine', typed });
  const khz = Number(whole) * 1000 + Number(part.slice(0, 3).padEnd(3, '0'));
  if (khz < LOWEST_KHZ || khz > HIGHEST_KHZ) return fail({ code: 'frequency-out-of-range', typed });
  return ok(khz);
}

/** `606250` is `'606.250'`. */
export const megahertz = (khz: number): string =>
  `${Math.floor(khz / 1000)}.${String(khz % 1000).padStart(3, '0')}`;
