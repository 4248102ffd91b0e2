import { expect, test } from 'vitest';
import { SUGGESTED_GUARDS } from '../../src/radio/carrier.ts';
import { cleanSet } from '../../src/radio/clean/clean-set.ts';
import { analyse } from '../../src/radio/intermodulation/analyse.ts';
import type { Result } from '../../src/shared/result.ts';
import { bruteForce } from './brute-force.ts';
import { hitLines, randomCarriers } from './sample-carriers.ts';

// How fast it is, the bench says; here it is only right, on plans of the size the bench measures.

const GUARDS = { ...SUGGESTED_GUARDS, twoToneFifthKhz: 50 };
const WHOLE_LIST = { listedPerFamily: Number.MAX_SAFE_INTEGER };

const unwrap = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
};

test.each([64, 128])('%i carriers over 138 MHz have the hits that brute force finds (seeded)', (count) => {
  const carriers = randomCarriers(count, count, 138_000, false);
  expect(hitLines(unwrap(analyse(carriers, GUARDS, WHOLE_LIST)))).toEqual(bruteForce(carriers, GUARDS));
});

test('500 crowded carriers are counted to the last hit (seed 500)', () => {
  const { counts } = unwrap(analyse(randomCarriers(500, 500, 1_000, false), GUARDS));
  expect(Object.values(counts).reduce((sum, count) => sum + count, 0)).toBeGreaterThan(1e8);
});

test.each([
  [8, 0],
  [16, 0],
  [8, 24],
])(
  'a set of %i packs among %i fixed carriers is narrower than the greedy one (seed 3)',
  (count, fixedCount) => {
    const band = [{ fromKhz: 470_000, toKhz: 608_000, rasterKhz: 25 }];
    const fixed = randomCarriers(3, fixedCount, 138_000, true);
    const { spanKhz, greedySpanKhz } = unwrap(cleanSet(count, band, SUGGESTED_GUARDS, fixed));
    expect(spanKhz).toBeLessThan(greedySpanKhz ?? 0);
  },
);
