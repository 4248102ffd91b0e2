import { fail, type Result } from '../../shared/result.ts';

/** A typed figure, its name, and its bounds. */
export interface Bound {
  readonly field: string;
  /** Missing or cleared: nothing to check. */
  readonly value: number | null | undefined;
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
}

/** The first figure that is no number, out of bounds or not whole; undefined if all are fine. */
export function outOfBounds(bounds: readonly Bound[]): Result<never> | undefined {
  for (const { field, value, min, max, whole } of bounds) {
    if (value === null || value === undefined) continue;
    if (!Number.isFinite(value)) return fail({ code: 'quantity-not-finite', field });
    if (value < min || value > max) return fail({ code: 'quantity-out-of-range', field, value, min, max });
    if (whole && !Number.isInteger(value)) return fail({ code: 'quantity-not-whole', field, value });
  }
  return undefined;
}
