import type { Result } from '../../src/shared/result.ts';

/** The value of a result that must be one. */
export function unwrap<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`Expected a value: ${JSON.stringify(result.problem)}`);
  return result.value;
}

/** The code of a problem, or `none`. */
export const codeOf = (result: Result<unknown>): string => (result.ok ? 'none' : result.problem.code);

/** A number as a table prints it. */
export const printed = (result: Result<number>, digits: number): string => unwrap(result).toFixed(digits);

/** Every number in a value, however deep. */
export function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(numbersIn);
}
