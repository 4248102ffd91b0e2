import type { ProblemOf } from '../shared/result.ts';

export type QuantityProblem = ProblemOf<
  'quantity-not-finite' | 'quantity-out-of-range' | 'quantity-not-whole'
>;

/** A typed number with its allowed range, ends included, and whether it must be whole. */
export interface Quantity {
  readonly field: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly whole?: boolean;
}

/**
 * The first number that is not finite, out of range or not whole, as a problem; `undefined` if all are fine.
 * Example: `[{ field: 'metres', value: 0, min: 0.1, max: 1000 }]` gives `quantity-out-of-range` for `metres`.
 */
export function firstBadQuantity(quantities: readonly Quantity[]): QuantityProblem | undefined {
  for (const { field, value, min, max, whole } of quantities) {
    if (!Number.isFinite(value)) return { code: 'quantity-not-finite', field };
    if (value < min || value > max) return { code: 'quantity-out-of-range', field, value, min, max };
    if (whole && !Number.isInteger(value)) return { code: 'quantity-not-whole', field };
  }
  return undefined;
}

/** Cable lengths; 10 km is a typing mistake on a set. */
export const metres = (value: number): Quantity => ({ field: 'metres', value, min: 0.1, max: 1000 });

/** A moment in UTC ms, within what a Date can hold. */
export const moment = (field: string, value: number): Quantity => ({
  field,
  value,
  min: -8.64e15,
  max: 8.64e15,
});
