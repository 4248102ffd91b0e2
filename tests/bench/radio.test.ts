import { expect, test } from 'vitest';
import { analyse } from '../../src/radio/analyse.ts';
import { SUGGESTED_GUARDS } from '../../src/radio/carrier.ts';
import { cleanPositions } from '../../src/radio/clean-positions.ts';
import { cleanSet } from '../../src/radio/clean-set.ts';
import { recheck } from '../../src/radio/recheck.ts';
import { bruteForce } from '../radio/brute-force.ts';
import { hitLines, randomCarriers } from '../radio/sample-carriers.ts';

const GUARDS = { ...SUGGESTED_GUARDS, twoToneFifthKhz: 50 };
/** The machine may be busy with other tests; the times themselves are checked, not how long the checking takes. */
const PATIENCE_MS = 60_000;
const WHOLE_LIST = { listedPerFamily: Number.MAX_SAFE_INTEGER };

/** The best of several runs: what the code costs when the machine is not busy with something else. */
function bestMs(runs: number, work: () => unknown): number {
  let best = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run += 1) {
    const from = performance.now();
    work();
    best = Math.min(best, performance.now() - from);
  }
  return best;
}

const report = (what: string, ms: number): void => console.info(`radio: ${what}: ${ms.toFixed(2)} ms`);

const unwrap = <T>(result: { ok: true; value: T } | { ok: false; problem: { code: string } }): T => {
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
};

test('64 carriers over 138 MHz are analysed with all victims in under 10 ms, as brute force would (seed 64)', () => {
  const carriers = randomCarriers(64, 64, 138_000, false);
  let expected: string[] = [];
  const plainMs = bestMs(1, () => {
    expected = bruteForce(carriers, GUARDS);
  });
  expect(hitLines(unwrap(analyse(carriers, GUARDS, WHOLE_LIST)))).toEqual(expected);
  const ms = bestMs(30, () => analyse(carriers, GUARDS));
  report(`64 carriers, ${expected.length} hits, brute force`, plainMs);
  report('64 carriers, analyse', ms);
  expect(ms).toBeLessThan(10);
});

test('one moved carrier of 64 is rechecked in under 1 ms (seed 65)', () => {
  const carriers = randomCarriers(65, 64, 138_000, false);
  const analysis = unwrap(analyse(carriers, GUARDS));
  let step = 0;
  const ms = bestMs(200, () => {
    step += 1;
    return recheck(analysis, { ...carriers[step % 64]!, khz: 470_000 + 25 * step });
  });
  report('64 carriers, recheck of one moved', ms);
  expect(ms).toBeLessThan(1);
});

test('128 carriers agree with brute force (seed 128)', { timeout: PATIENCE_MS }, () => {
  const carriers = randomCarriers(128, 128, 138_000, false);
  let expected: string[] = [];
  const plainMs = bestMs(1, () => {
    expected = bruteForce(carriers, GUARDS);
  });
  const ms = bestMs(5, () => analyse(carriers, GUARDS));
  report(`128 carriers, ${expected.length} hits, brute force`, plainMs);
  report('128 carriers, analyse', ms);
  expect(hitLines(unwrap(analyse(carriers, GUARDS, WHOLE_LIST)))).toEqual(expected);
  expect(ms).toBeLessThan(200);
});

test('500 crowded carriers are counted to the last hit within seconds', { timeout: PATIENCE_MS }, () => {
  const carriers = randomCarriers(500, 500, 1_000, false);
  let total = 0;
  const ms = bestMs(1, () => {
    const { counts } = unwrap(analyse(carriers, GUARDS));
    total = Object.values(counts).reduce((sum, count) => sum + count, 0);
  });
  report(`500 carriers within 1 MHz, ${total} hits counted`, ms);
  const spread = bestMs(1, () => analyse(randomCarriers(501, 500, 224_000, false), GUARDS));
  report('500 carriers over 224 MHz', spread);
  expect(total).toBeGreaterThan(1e8);
  expect(ms).toBeLessThan(20_000);
});

test('all 25 kHz positions of 138 MHz are weighed against 64 carriers in under 300 ms (seed 66)', () => {
  const carriers = randomCarriers(66, 64, 138_000, false);
  const range = { fromKhz: 470_000, toKhz: 608_000, rasterKhz: 25 };
  const ms = bestMs(3, () => cleanPositions(carriers, GUARDS, [range], []));
  report('5521 positions against 64 carriers', ms);
  const fromKhz = range.fromKhz;
  const plainMs = bestMs(1, () =>
    bruteForce([...carriers, { ...carriers[0]!, id: 'newcomer', khz: fromKhz }], GUARDS),
  );
  report('one position by brute force', plainMs);
  expect(ms).toBeLessThan(300);
});

test('a whole set is chosen within its step budget, whatever there is to look through', {
  timeout: PATIENCE_MS,
}, () => {
  const band = [{ fromKhz: 470_000, toKhz: 608_000, rasterKhz: 25 }];
  for (const [count, fixedCount] of [
    [8, 0],
    [16, 0],
    [8, 24],
    [24, 0],
  ] as const) {
    const fixed = randomCarriers(3, fixedCount, 138_000, true);
    let set: ReturnType<typeof cleanSet> | undefined;
    const ms = bestMs(1, () => {
      set = cleanSet(count, band, SUGGESTED_GUARDS, fixed);
    });
    const { spanKhz, greedySpanKhz, provenShortest } = unwrap(set!);
    report(
      `set of ${count} among ${fixedCount}: ${spanKhz} kHz${provenShortest ? ', proven' : ''}, greedy ${greedySpanKhz} kHz`,
      ms,
    );
    expect(spanKhz).toBeLessThan(greedySpanKhz ?? 0);
    expect(ms).toBeLessThan(10_000);
  }
});
