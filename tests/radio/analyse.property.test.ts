import { describe, expect, test, vi } from 'vitest';
import { type Carrier, type Guards, SUGGESTED_GUARDS } from '../../src/radio/carrier.ts';
import { seededBelow } from '../../src/radio/clean/seeded.ts';
import { analyse } from '../../src/radio/intermodulation/analyse.ts';
import type { Analysis } from '../../src/radio/intermodulation/analysis.ts';
import { recheck } from '../../src/radio/intermodulation/recheck.ts';
import { bruteForce } from './brute-force.ts';
import { hitLines, randomCarriers } from './sample-carriers.ts';

// Long searches on a machine that may be busy with other tests.
vi.setConfig({ testTimeout: 60_000 });

const ALL_ON: Guards = { ...SUGGESTED_GUARDS, twoToneFifthKhz: 75 };
const WHOLE_LIST = { listedPerFamily: Number.MAX_SAFE_INTEGER };

const analysed = (carriers: readonly Carrier[], options = {}): Analysis => {
  const result = analyse(carriers, ALL_ON, { ...WHOLE_LIST, ...options });
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
};

const rechecked = (analysis: Analysis, changed: Carrier): Analysis => {
  const result = recheck(analysis, changed);
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
};

const SIZES = [2, 3, 4, 5, 7, 10, 16, 25, 40];

describe.each(SIZES)('a seeded set of %i carriers (seeds 1 to 4)', (n) => {
  test.each([1, 2, 3, 4])('seed %i: the hits are those of brute force', (seed) => {
    const carriers = randomCarriers(seed * 1000 + n, n, seed % 2 ? 24_000 : 8_000, seed > 2);
    for (const includeOwnVictims of [false, true])
      expect(hitLines(analysed(carriers, { includeOwnVictims }))).toEqual(
        bruteForce(carriers, ALL_ON, includeOwnVictims),
      );
  });

  test.each([5, 6])('seed %i: counting without visiting agrees with visiting', (seed) => {
    const carriers = randomCarriers(seed * 1000 + n, n, 12_000, true);
    for (const includeOwnVictims of [false, true]) {
      const { counts, hitsOnCarrier } = analysed(carriers, { includeOwnVictims });
      const counted = analysed(carriers, { includeOwnVictims, mostHeld: 0 });
      expect({ counts: counted.counts, hitsOnCarrier: counted.hitsOnCarrier }).toEqual({
        counts,
        hitsOnCarrier,
      });
    }
  });

  test.each([7, 8])(
    'seed %i: twenty changes rechecked one by one equal each analysis from scratch',
    (seed) => {
      const below = seededBelow(seed * 1000 + n);
      for (const includeOwnVictims of [false, true]) {
        let analysis = analysed(randomCarriers(seed * 100 + n, n, 16_000, true), { includeOwnVictims });
        for (let change = 0; change < 20; change += 1) {
          const pack = analysis.carriers[below(n)]!;
          analysis = rechecked(analysis, {
            ...pack,
            khz: 470_000 + 25 * below(640),
            victim: below(4) > 0,
            transmitting: below(4) > 0,
          });
          expect(analysis).toEqual(analysed(analysis.carriers, { includeOwnVictims }));
        }
      }
    },
  );
});

test('a recheck whose hits outgrow what is held still equals the analysis from scratch (seed 9)', () => {
  const carriers = randomCarriers(9, 12, 3_000, false);
  const analysis = analysed(carriers, { mostHeld: 300 });
  const changed = { ...carriers[0]!, khz: 470_500 };
  expect(rechecked(analysis, changed)).toEqual(analysed([changed, ...carriers.slice(1)], { mostHeld: 300 }));
});
