/** Throws on a caller's mistake, so that no NaN or fraction of a frame gets further. */
export function requireWhole(value: number, what: string): number {
  if (!Number.isSafeInteger(value)) throw new RangeError(`${what} must be a whole number, got ${value}`);
  return value;
}

/** A clock reading in whole milliseconds; some clocks return fractions. */
export const wholeMs = (ms: number): number => requireWhole(Math.floor(ms), 'milliseconds');

/** Remainder that is never negative: `modulo(-1, 24)` is 23. */
export const modulo = (value: number, size: number): number => ((value % size) + size) % size;

/** `a × b ÷ c` rounded down, exact for whole numbers however large the product; `mulDivFloor(-1, 1, 2)` is -1. */
export function mulDivFloor(a: number, b: number, c: number): number {
  const product = a * b;
  // Half the safe range, so that rounding a negative product down cannot leave it.
  if (Math.abs(product) <= 2 ** 52) return (product - modulo(product, c)) / c;
  const wide = BigInt(a) * BigInt(b);
  const size = BigInt(c);
  const quotient = wide / size;
  // BigInt division truncates, so a negative inexact quotient is one too high.
  const floored = wide < 0n && quotient * size !== wide ? quotient - 1n : quotient;
  return requireWhole(Number(floored), 'result');
}

/** `a × b ÷ c` rounded up, exact like `mulDivFloor`; `mulDivCeil(1, 1, 2)` is 1. */
export const mulDivCeil = (a: number, b: number, c: number): number => 0 - mulDivFloor(0 - a, b, c);
