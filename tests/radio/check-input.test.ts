import { describe, expect, test, vi } from 'vitest';
import { checkKhz } from '../../src/facts/kinds/frequency.ts';
import { type Carrier, SUGGESTED_GUARDS } from '../../src/radio/carrier.ts';
import { checkNewKhz } from '../../src/radio/check-input.ts';
import { cleanPositions } from '../../src/radio/clean/clean-positions.ts';
import { analyse } from '../../src/radio/intermodulation/analyse.ts';
import { recheck } from '../../src/radio/intermodulation/recheck.ts';
import { NO_GUARDS, packsAt, randomCarriers } from './sample-carriers.ts';

// Long searches on a machine that may be busy with other tests.
vi.setConfig({ testTimeout: 60_000 });

const codeOf = (result: { ok: true } | { ok: false; problem: { code: string } }): string =>
  result.ok ? 'ok' : result.problem.code;

/** No number anywhere in a result may be NaN or infinite. */
function unusableNumbers(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => unusableNumbers(inner, `${path}.${key}`));
}

const BAD_KHZ: [number, string][] = [
  [0, 'frequency-not-positive'],
  [-470_100, 'frequency-not-positive'],
  [999, 'frequency-too-low'],
  [100_000_001, 'frequency-too-high'],
  [470_100.5, 'frequency-not-whole'],
  [Number.NaN, 'frequency-not-whole'],
  [Number.POSITIVE_INFINITY, 'frequency-not-whole'],
  [1e300, 'frequency-not-whole'],
];

describe.each(BAD_KHZ)('a frequency of %d kHz', (khz, code) => {
  const pack = { ...packsAt([470_100])[0]!, khz };

  test(`is ${code} wherever it is typed, with no NaN in the problem`, () => {
    const range = { fromKhz: 470_000, toKhz: 471_000, rasterKhz: 25 };
    const analysis = analyse(packsAt([470_100]), SUGGESTED_GUARDS);
    if (!analysis.ok) throw new Error(analysis.problem.code);
    const results = [
      checkKhz(khz),
      checkNewKhz(khz, [], [range]),
      analyse([pack], SUGGESTED_GUARDS),
      recheck(analysis.value, pack),
      cleanPositions([pack], SUGGESTED_GUARDS, [range], []),
      cleanPositions([], SUGGESTED_GUARDS, [{ ...range, fromKhz: khz }], []),
      cleanPositions([], SUGGESTED_GUARDS, [{ ...range, toKhz: khz }], []),
      cleanPositions([], SUGGESTED_GUARDS, [range], [{ name: 'TV', fromKhz: khz, toKhz: khz }]),
      analyse([], SUGGESTED_GUARDS, { occupied: [{ name: 'TV', fromKhz: khz, toKhz: 600_000 }] }),
    ];
    expect(results.map(codeOf)).toEqual(results.map(() => code));
    expect(unusableNumbers(results)).toEqual([]);
  });
});

describe('a new frequency', () => {
  const others = packsAt([470_100]);
  const ranges = [{ fromKhz: 470_000, toKhz: 476_000, rasterKhz: 25 }];

  test.each([
    [470_125, 'ok'],
    [470_000, 'ok'],
    [476_000, 'ok'],
    [470_100, 'frequency-taken'],
    [469_975, 'frequency-outside-ranges'],
    [476_025, 'frequency-outside-ranges'],
    [470_110, 'frequency-off-raster'],
  ])('%i kHz is %s', (khz, code) => {
    expect(codeOf(checkNewKhz(khz, others, ranges))).toBe(code);
  });

  test('is free to be anywhere while no ranges were entered', () => {
    expect(checkNewKhz(863_111, others, [])).toEqual({ ok: true, value: 863_111 });
  });

  test('on one of two overlapping rasters is on the raster', () => {
    const both = [...ranges, { fromKhz: 470_010, toKhz: 476_000, rasterKhz: 100 }];
    expect(codeOf(checkNewKhz(470_110, [], both))).toBe('ok');
  });

  test('already taken names who has it', () => {
    expect(checkNewKhz(470_100, others, ranges)).toEqual({
      ok: false,
      problem: { code: 'frequency-taken', khz: 470_100, by: 'c0' },
    });
  });
});

describe('a list of carriers', () => {
  test('with one id twice is refused', () => {
    const [pack] = packsAt([470_100]);
    expect(analyse([pack!, { ...pack!, khz: 471_000 }], SUGGESTED_GUARDS)).toEqual({
      ok: false,
      problem: { code: 'carrier-named-twice', id: 'c0' },
    });
  });

  test('with one frequency twice is analysed: two packs on one frequency are a spacing hit at 0 kHz', () => {
    const result = analyse(packsAt([470_100, 470_100, 480_000]), SUGGESTED_GUARDS);
    expect(result).toMatchObject({
      ok: true,
      value: {
        counts: { spacing: 1 },
        hits: [{ family: 'spacing', sourceIds: ['c0'], victimId: 'c1', productKhz: 470_100, distanceKhz: 0 }],
        hitsOnCarrier: [1, 1, 0],
      },
    });
  });

  test('of 513 is too long, of 512 is not', () => {
    const many = (count: number): Carrier[] =>
      packsAt(Array.from({ length: count }, (_, at) => 470_000 + at));
    expect(analyse(many(513), NO_GUARDS)).toEqual({
      ok: false,
      problem: { code: 'carriers-too-many', count: 513, most: 512 },
    });
    expect(codeOf(analyse(many(512), NO_GUARDS))).toBe('ok');
  });

  test('that is empty is a plan without hits', () => {
    expect(analyse([], SUGGESTED_GUARDS)).toMatchObject({
      ok: true,
      value: { hits: [], hitsOnCarrier: [], listIsComplete: true },
    });
  });

  test('does not change under analysis', () => {
    const carriers = Object.freeze(randomCarriers(11, 20, 8_000, true).map((one) => Object.freeze(one)));
    const before = structuredClone(carriers);
    analyse(carriers, SUGGESTED_GUARDS);
    cleanPositions(carriers, SUGGESTED_GUARDS, [{ fromKhz: 470_000, toKhz: 471_000, rasterKhz: 25 }], []);
    expect(carriers).toEqual(before);
  });
});

describe('guards, spacings, ranges and blocks', () => {
  test.each([-1, 10_001, 0.5, Number.NaN, Number.POSITIVE_INFINITY])(
    'a guard of %d kHz is refused by name',
    (khz) => {
      const result = analyse([], { ...SUGGESTED_GUARDS, twoToneFifthKhz: khz });
      expect(result).toMatchObject({ problem: { code: 'guard-unusable', guard: 'twoToneFifthKhz' } });
      expect(unusableNumbers(result)).toEqual([]);
    },
  );

  test.each([-1, 10_001, Number.NaN])('a spacing of %d kHz is refused by carrier', (spacingKhz) => {
    const pack = { ...packsAt([470_100])[0]!, spacingKhz };
    expect(analyse([pack], SUGGESTED_GUARDS)).toMatchObject({
      problem: { code: 'spacing-unusable', id: 'c0' },
    });
    expect(
      cleanPositions([], SUGGESTED_GUARDS, [{ fromKhz: 470_000, toKhz: 470_000, rasterKhz: 25 }], [], {
        spacingKhz,
      }),
    ).toMatchObject({ problem: { code: 'spacing-unusable', id: 'new-pack' } });
  });

  test.each([
    [{ fromKhz: 471_000, toKhz: 470_000, rasterKhz: 25 }, 'range-upside-down'],
    [{ fromKhz: 470_000, toKhz: 2_470_001, rasterKhz: 25 }, 'range-too-wide'],
    [{ fromKhz: 470_000, toKhz: 471_000, rasterKhz: 0 }, 'raster-unusable'],
    [{ fromKhz: 470_000, toKhz: 471_000, rasterKhz: -25 }, 'raster-unusable'],
    [{ fromKhz: 470_000, toKhz: 471_000, rasterKhz: Number.NaN }, 'raster-unusable'],
    [{ fromKhz: 470_000, toKhz: 471_000, rasterKhz: 12.5 }, 'raster-unusable'],
  ])('the range %j is %s', (range, code) => {
    const result = cleanPositions([], SUGGESTED_GUARDS, [range], []);
    expect(codeOf(result)).toBe(code);
    expect(unusableNumbers(result)).toEqual([]);
  });

  test('the widest and the narrowest that can be are taken', () => {
    const range = (fromKhz: number, toKhz: number, rasterKhz: number) =>
      codeOf(cleanPositions([], { ...NO_GUARDS, carrierKhz: 10_000 }, [{ fromKhz, toKhz, rasterKhz }], []));
    expect(range(470_000, 2_470_000, 1_000_000)).toBe('ok');
    expect(range(470_000, 470_000, 1)).toBe('ok');
    expect(range(1_000, 1_000, 1)).toBe('ok');
    const spaced = (spacingKhz: number) => [{ ...packsAt([100_000_000])[0]!, spacingKhz }];
    for (const khz of [0, 10_000]) {
      expect(codeOf(analyse(spaced(khz), { ...NO_GUARDS, tvEdgeKhz: khz }))).toBe('ok');
    }
  });

  test('what is wrong with them is told with the most there may be', () => {
    const range = { fromKhz: 470_000, toKhz: 2_470_001, rasterKhz: 25 };
    expect(cleanPositions([], SUGGESTED_GUARDS, [range], [])).toMatchObject({
      problem: { ...{ fromKhz: 470_000, toKhz: 2_470_001 }, mostKhz: 2_000_000 },
    });
    expect(analyse([], { ...SUGGESTED_GUARDS, carrierKhz: 10_001 })).toMatchObject({
      problem: { khz: 10_001, mostKhz: 10_000 },
    });
    expect(checkKhz(999)).toMatchObject({ problem: { khz: 999, lowestKhz: 1_000 } });
    expect(checkKhz(100_000_001)).toMatchObject({ problem: { highestKhz: 100_000_000 } });
  });

  test('an occupied block upside down is refused', () => {
    const blocks = [{ name: 'TV', fromKhz: 480_000, toKhz: 470_000 }];
    expect(codeOf(analyse([], SUGGESTED_GUARDS, { occupied: blocks }))).toBe('range-upside-down');
  });

  test('a raster wider than its range leaves the one position at its foot', () => {
    const found = cleanPositions(
      [],
      SUGGESTED_GUARDS,
      [{ fromKhz: 470_000, toKhz: 470_010, rasterKhz: 25 }],
      [],
    );
    expect(found).toMatchObject({ ok: true, value: [{ khz: 470_000 }] });
  });
});

describe('five hundred carriers', () => {
  test('are analysed with exact counts, a capped list and no NaN (seed 500)', () => {
    const result = analyse(randomCarriers(500, 500, 200_000, true), SUGGESTED_GUARDS, {
      listedPerFamily: 40,
    });
    if (!result.ok) throw new Error(result.problem.code);
    const { hits, counts, hitsOnCarrier, listIsComplete, held } = result.value;
    expect(hits.length).toBe(120);
    expect(listIsComplete).toBe(false);
    expect(held).toBeUndefined();
    const onCarriers = hitsOnCarrier.reduce((sum, count) => sum + count, 0);
    const total = Object.values(counts).reduce((sum, count) => sum + count, 0);
    expect(onCarriers).toBeGreaterThanOrEqual(total);
    expect(onCarriers - counts.spacing).toBeLessThanOrEqual(total);
    expect(unusableNumbers(result.value)).toEqual([]);
  });
});

describe('carriers in occupied spectrum', () => {
  const occupied = [{ name: 'TV 15', fromKhz: 476_000, toKhz: 482_000 }];

  test('are told with their distance to the edge: inside, near, and just far enough', () => {
    const carriers = packsAt([477_000, 475_900, 475_800, 482_199, 482_200]);
    const result = analyse(carriers, SUGGESTED_GUARDS, { occupied });
    expect(result).toMatchObject({
      ok: true,
      value: {
        edgeHits: [
          { carrierId: 'c0', blockName: 'TV 15', distanceKhz: 0 },
          { carrierId: 'c1', blockName: 'TV 15', distanceKhz: 100 },
          { carrierId: 'c3', blockName: 'TV 15', distanceKhz: 199 },
        ],
      },
    });
  });

  test('take no part while they neither transmit nor listen', () => {
    const off = packsAt([477_000]).map((pack) => ({ ...pack, victim: false, transmitting: false }));
    expect(analyse(off, SUGGESTED_GUARDS, { occupied })).toMatchObject({ ok: true, value: { edgeHits: [] } });
  });
});

test('a carrier that is not in the plan cannot be rechecked', () => {
  const analysis = analyse(packsAt([470_100]), SUGGESTED_GUARDS);
  if (!analysis.ok) throw new Error(analysis.problem.code);
  expect(recheck(analysis.value, { ...packsAt([470_100])[0]!, id: 'stranger' })).toEqual({
    ok: false,
    problem: { code: 'carrier-unknown', id: 'stranger' },
  });
});
