import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { modulo, mulDivCeil, mulDivFloor, requireWhole, wholeMs } from '../../src/time/whole-number.ts';

const SEED = 20261007;

describe('exact whole numbers', () => {
  test(`multiplying and dividing agrees with unbounded whole numbers on both sides of 2^53 (seed ${SEED})`, () => {
    const property = fc.property(
      fc.oneof(fc.integer({ min: -1000, max: 1000 }), fc.integer({ min: -1e12, max: 1e12 })),
      fc.integer({ min: 1, max: 60_000 }),
      fc.integer({ min: 7, max: 400_000_000 }),
      (a, b, c) => {
        const floored = BigInt(mulDivFloor(a, b, c));
        const raised = BigInt(mulDivCeil(a, b, c));
        const product = BigInt(a) * BigInt(b);
        const size = BigInt(c);
        const isFloor = floored * size <= product && product < (floored + 1n) * size;
        return isFloor && raised === (floored * size === product ? floored : floored + 1n);
      },
    );
    const edges: [number, number, number][] = [
      [2 ** 52, 1, 1],
      [-(2 ** 52), 1, 7],
      [2 ** 52 - 1, 7, 8],
      [-1, 1, 400_000_000],
      [0, 1, 1],
    ];
    expect(fc.check(property, { seed: SEED, numRuns: 5000, examples: edges }).counterexample).toBeNull();
  });

  test('a result beyond 2^53 is refused rather than rounded', () => {
    expect(() => mulDivFloor(2 ** 52, 8, 3)).toThrow(RangeError);
  });

  test('no result is minus zero', () => {
    expect(mulDivCeil(0, 5, 3)).toBe(0);
    expect(mulDivCeil(-1, 1, 2)).toBe(0);
    expect(modulo(-24, 24)).toBe(0);
  });

  test('a remainder is never negative', () => {
    expect(modulo(-1, 24)).toBe(23);
    expect(modulo(25, 24)).toBe(1);
  });

  test('fractions and what is no number are stopped; parts of a millisecond are cut off', () => {
    expect(() => requireWhole(1.5, 'frames')).toThrow('frames must be a whole number, got 1.5');
    expect(() => wholeMs(Number.NaN)).toThrow(RangeError);
    expect(wholeMs(1.9)).toBe(1);
    expect(wholeMs(-0.1)).toBe(-1);
  });
});
