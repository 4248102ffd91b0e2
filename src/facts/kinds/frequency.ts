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
