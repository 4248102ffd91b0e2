import { describe, expect, test } from 'vitest';
import { type Carrier, type Guards, SUGGESTED_GUARDS } from '../../src/radio/carrier.ts';
import { analyse } from '../../src/radio/intermodulation/analyse.ts';
import type { Analysis, AnalysisOptions } from '../../src/radio/intermodulation/analysis.ts';
import type { Family } from '../../src/radio/intermodulation/hit.ts';
import {
  allFifthOrder,
  allThirdOrder,
  productCounts,
} from '../../src/radio/intermodulation/product-counts.ts';
import { parseMhz } from '../../src/radio/mhz-text.ts';
import { NO_GUARDS, onGrid, packsAt, STEP_KHZ } from './sample-carriers.ts';

function analysed(
  carriers: readonly Carrier[],
  guards: Guards,
  options: Partial<AnalysisOptions> = {},
): Analysis {
  const result = analyse(carriers, guards, { listedPerFamily: 100_000, ...options });
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
}

const khzOf = (mhz: string): number => {
  const khz = parseMhz(mhz);
  if (!khz.ok) throw new Error(khz.problem.code);
  return khz.value;
};

/** Guards of one grid step, strict: only products exactly on a carrier hit. */
const EXACT: Guards = {
  ...NO_GUARDS,
  twoToneThirdKhz: STEP_KHZ,
  threeToneThirdKhz: STEP_KHZ,
  twoToneFifthKhz: STEP_KHZ,
};
const FAR: Guards = { ...EXACT, twoToneThirdKhz: 10_000, threeToneThirdKhz: 10_000, twoToneFifthKhz: 10_000 };

describe('product counts (2A-B: n(n-1), public tutorials; A+B-C by counting; totals n²(n-1)/2)', () => {
  const TABLE = [
    { n: 2, two: 2, three: 0, all: 2 },
    { n: 3, two: 6, three: 3, all: 9 },
    { n: 4, two: 12, three: 12, all: 24 },
    { n: 8, two: 56, three: 168, all: 224 },
    { n: 12, two: 132, three: 660, all: 792 },
    { n: 16, two: 240, three: 1_680, all: 1_920 },
    { n: 24, two: 552, three: 6_072, all: 6_624 },
    { n: 32, two: 992, three: 14_880, all: 15_872 },
    { n: 64, two: 4_032, three: 124_992, all: 129_024 },
  ];

  test.each(TABLE)('$n carriers make $two, $three and $two', ({ n, two, three, all }) => {
    expect(productCounts(n)).toEqual({ twoToneThird: two, threeToneThird: three, twoToneFifth: two });
    expect(allThirdOrder(n)).toBe(all);
  });

  test.each(TABLE)('the analysis itself looks at all of them for $n carriers', ({ n, two, three }) => {
    const sources = packsAt(Array.from({ length: n }, (_, place) => 500_000 + 25 * place)).map((pack) => ({
      ...pack,
      victim: false,
    }));
    const listener = { id: 'listener', name: 'Listener', khz: 500_500, victim: true, transmitting: false };
    const { counts } = analysed([...sources, listener], FAR, { listedPerFamily: 0 });
    expect(counts).toEqual({
      spacing: 0,
      'two-tone-third': two,
      'three-tone-third': three,
      'two-tone-fifth': two,
    });
  });

  // A trade-press article prints 2, 9, 24, 50, 90, 147, 225 for n = 2 to 8; its 225 is a misprint for 224.
  test('the totals are those printed in the trade press, but for the misprint 225 at eight carriers', () => {
    expect([2, 3, 4, 5, 6, 7, 8].map(allThirdOrder)).toEqual([2, 9, 24, 50, 90, 147, 224]);
    expect(allThirdOrder(32)).toBe(15_872);
  });

  test.each([2, 5, 17, 63])('one carrier more than %i adds 2n and 3n(n-1)/2 products (by counting)', (n) => {
    const before = productCounts(n);
    const after = productCounts(n + 1);
    expect(after.twoToneThird - before.twoToneThird).toBe(2 * n);
    expect(after.threeToneThird - before.threeToneThird).toBe((3 * n * (n - 1)) / 2);
  });

  /** Every choice of whole factors for n carriers whose sum is 1 and whose sizes add up to 5, on two carriers or more. */
  function countFifth(n: number, sum = 1, size = 5, used = 0): number {
    if (n === 0) return sum === 0 && size === 0 && used > 1 ? 1 : 0;
    let ways = 0;
    for (let factor = -size; factor <= size; factor += 1)
      ways += countFifth(n - 1, sum - factor, size - Math.abs(factor), used + (factor === 0 ? 0 : 1));
    return ways;
  }

  test.each([
    [3, 15],
    [4, 64],
    [5, 200],
    [6, 510],
  ])('all fifth-order families of %i carriers make %i, by enumeration', (n, count) => {
    expect(allFifthOrder(n)).toBe(count);
    expect(countFifth(n)).toBe(count);
  });

  test.each([
    [8, 2_240],
    [12, 17_952],
    [16, 78_080],
    [32, 2_634_752],
  ])('all fifth-order families of %i carriers make %i (by formula)', (n, count) => {
    expect(allFifthOrder(n)).toBe(count);
  });
});

describe('worked products', () => {
  /** Listening ears every 100 kHz hear every product that lies on one. */
  function productsOf(mhz: readonly string[], fromMhz: number, toMhz: number): Record<Family, string[]> {
    const sources = packsAt(mhz.map(khzOf)).map((pack) => ({ ...pack, victim: false }));
    const ears = Array.from(
      { length: (toMhz - fromMhz) * 10 + 1 },
      (_, step) => fromMhz * 1000 + step * 100,
    ).map((khz) => ({ id: `ear ${khz}`, name: 'Ear', khz, victim: true, transmitting: false }));
    const { hits } = analysed([...sources, ...ears], {
      ...NO_GUARDS,
      twoToneThirdKhz: 1,
      threeToneThirdKhz: 1,
      twoToneFifthKhz: 1,
    });
    const heard = (family: Family): string[] =>
      hits
        .filter((hit) => hit.family === family)
        .map(({ productKhz }) => productKhz)
        .sort((a, b) => a - b)
        .map((khz) => String(khz / 1000));
    return {
      spacing: [],
      'two-tone-third': heard('two-tone-third'),
      'three-tone-third': heard('three-tone-third'),
      'two-tone-fifth': heard('two-tone-fifth'),
    };
  }

  test.each([
    {
      source: 'a public computer-science question-and-answer thread, recomputed',
      carriers: '500 501 504',
      two: '496 498 499 502 507 508',
      three: '497 503 505',
      fifth: '492 495 498 503 510 512',
    },
    {
      source: 'a trainer’s article, which omits 504 and 506; full list recomputed',
      carriers: '501 502 505',
      two: '497 499 500 503 508 509',
      three: '498 504 506',
      fifth: '493 496 499 504 511 513',
    },
    {
      source: 'own example, by arithmetic; 469.7 comes twice',
      carriers: '470.1 470.5 471.3',
      two: '468.9 469.7 469.7 470.9 472.1 472.5',
      three: '469.3 470.9 471.7',
      fifth: '467.7 468.9 469.3 471.3 472.9 473.7',
    },
    { source: 'a public tutorial', carriers: '600 606', two: '594 612', three: '', fifth: '588 618' },
    {
      source: 'the same tutorial with a third carrier, its wrong 596, 602 and 616 recomputed',
      carriers: '600 606 614',
      two: '586 594 598 612 622 628',
      three: '592 608 620',
      fifth: undefined,
    },
  ])('of $carriers MHz ($source)', ({ carriers, two, three, fifth }) => {
    const mhz = carriers.split(' ');
    const middle = Math.round(Number(mhz[1]));
    const found = productsOf(mhz, middle - 22, middle + 26);
    expect(found['two-tone-third'].join(' ')).toBe(two);
    expect(found['three-tone-third'].join(' ')).toBe(three);
    if (fifth !== undefined) expect(found['two-tone-fifth'].join(' ')).toBe(fifth);
  });

  test('of 470.1, 470.5 and 471.3 MHz put one fifth-order product exactly on a carrier, and nothing else', () => {
    const carriers = packsAt(['470.1', '470.5', '471.3'].map(khzOf));
    const { hits } = analysed(carriers, {
      ...EXACT,
      twoToneThirdKhz: 100,
      threeToneThirdKhz: 100,
      twoToneFifthKhz: 1,
    });
    expect(hits).toEqual([
      {
        family: 'two-tone-fifth',
        sourceIds: ['c1', 'c0'],
        productKhz: 471_300,
        victimId: 'c2',
        distanceKhz: 0,
      },
    ]);
  });
});

// Lengths: OEIS A003022; the sets agree in several public tables of Golomb rulers; fifth-order hits counted by search.
const RULERS = [
  { steps: '0 1 3', fifth: 1 },
  { steps: '0 1 4 6', fifth: 1 },
  { steps: '0 1 4 9 11', fifth: 0 },
  { steps: '0 1 4 10 12 17', fifth: 2 },
  { steps: '0 1 4 10 18 23 25', fifth: 2 },
  { steps: '0 1 4 9 15 22 32 34', fifth: 1 },
  { steps: '0 1 5 12 25 27 35 41 44', fifth: 2 },
  { steps: '0 1 6 10 23 26 34 41 53 55', fifth: 3 },
  { steps: '0 1 4 13 28 33 47 54 64 70 72', fifth: 3 },
  { steps: '0 2 6 24 29 40 43 55 68 75 76 85', fifth: 6 },
  { steps: '0 2 5 25 37 43 59 70 85 89 98 99 106', fifth: 5 },
  { steps: '0 4 6 20 35 52 59 77 78 86 89 99 122 127', fifth: 7 },
  { steps: '0 1 4 11 26 32 56 68 76 115 117 134 150 163 168 177', fifth: 7 },
  { steps: '0 1 8 11 68 77 94 116 121 156 158 179 194 208 212 228 240 253 259 283', fifth: 6 },
  {
    steps: '0 9 33 37 38 97 122 129 140 142 152 191 205 208 252 278 286 326 332 353 368 384 403 425',
    fifth: 5,
  },
];

const steps = (text: string): number[] => text.split(' ').map(Number);

describe('sets free of third-order hits', () => {
  test.each(RULERS)(
    'Golomb ruler $steps: no third-order hit, $fifth fifth-order hits',
    ({ steps: marks, fifth }) => {
      const { counts } = analysed(onGrid(steps(marks)), EXACT);
      expect(counts).toEqual({
        spacing: 0,
        'two-tone-third': 0,
        'three-tone-third': 0,
        'two-tone-fifth': fifth,
      });
    },
  );

  test('the other shortest set of five, 0 2 7 8 11 (OEIS A036501: two of them), is clean as well', () => {
    const { counts } = analysed(onGrid([0, 2, 7, 8, 11]), EXACT);
    expect([counts['two-tone-third'], counts['three-tone-third']]).toEqual([0, 0]);
  });

  // Attributed to the tables of 1953 from memory; that they are clean is checked here.
  test.each(['1 2 5 14 25 31 39 41 46', '1 2 8 12 27 40 48 57 60 62'])(
    'the early set %s is clean',
    (marks) => {
      const { counts } = analysed(onGrid(steps(marks)), EXACT);
      expect([counts['two-tone-third'], counts['three-tone-third']]).toEqual([0, 0]);
    },
  );

  // By exhaustive search: the shortest sets that also keep 3A-2B away.
  test.each([
    '0 1 4',
    '0 1 5 8',
    '0 1 4 9 11',
    '0 1 4 11 17 19',
    '0 1 7 11 20 23 25',
    '0 3 5 17 21 27 28 36',
    '0 3 4 10 19 21 33 41 46',
  ])('%s is free of third order and of 3A-2B', (marks) => {
    const { hits } = analysed(onGrid(steps(marks)), EXACT);
    expect(hits).toEqual([]);
  });

  // By exhaustive search: sets free of every fifth-order family are free of those tested here too.
  test.each(['0 1 4', '0 1 7 11', '0 1 15 18 23', '0 2 11 26 42 45'])(
    '%s (B3 set) is free of all that is tested',
    (marks) => {
      expect(analysed(onGrid(steps(marks)), EXACT).hits).toEqual([]);
    },
  );
});

describe('the guard is strict (eight carriers from 480.0 MHz, the ruler of 34 at 0.4 MHz)', () => {
  const mhz = ['480.0', '480.4', '481.6', '483.6', '486.0', '488.8', '492.8', '493.6'];
  const carriers = packsAt(mhz.map(khzOf));
  const guarded = (khz: number): Guards => ({ ...NO_GUARDS, twoToneThirdKhz: khz, threeToneThirdKhz: khz });

  test('the typed frequencies are the ruler', () => {
    expect(carriers.map(({ khz }) => (khz - 480_000) / 400)).toEqual(steps('0 1 4 9 15 22 32 34'));
  });

  test.each([1, 50, 100, 399, 400])('no hit at a guard of %i kHz', (khz) => {
    expect(analysed(carriers, guarded(khz)).hits).toEqual([]);
  });

  test('8 and 24 hits, all at exactly one step, as soon as the step itself counts', () => {
    const { counts, hits } = analysed(carriers, guarded(401));
    expect([counts['two-tone-third'], counts['three-tone-third']]).toEqual([8, 24]);
    expect(new Set(hits.map(({ distanceKhz }) => distanceKhz))).toEqual(new Set([400]));
  });
});

describe('sets broken on purpose (counted by exhaustive enumeration)', () => {
  test.each([
    { steps: '0 1 4 9 15 22 32 34', two: 0, three: 0, withOwn: 0 },
    { steps: '0 1 4 8 15 22 32 34', two: 6, three: 4, withOwn: 7 },
    { steps: '0 1 4 9 15 22 31 34', two: 0, three: 8, withOwn: 8 },
    { steps: '0 2 4 9 15 22 32 34', two: 2, three: 12, withOwn: 13 },
    { steps: '0 1 4 7', two: 2, three: 0, withOwn: 1 },
    { steps: '0 1 3 4', two: 0, three: 4, withOwn: 4 },
    { steps: '0 1 2 3 4 5 6 7', two: 24, three: 88, withOwn: 100 },
  ])(
    '$steps: $two hits of 2A-B, $three of A+B-C, $withOwn with own carriers',
    ({ steps: marks, two, three, withOwn }) => {
      const others = analysed(onGrid(steps(marks)), EXACT).counts;
      const all = analysed(onGrid(steps(marks)), EXACT, { includeOwnVictims: true }).counts;
      expect([others['two-tone-third'], others['three-tone-third']]).toEqual([two, three]);
      expect([all['two-tone-third'], all['three-tone-third']]).toEqual([two, withOwn]);
    },
  );

  test('9 moved to 8 gives exactly the six listed 2A-B hits', () => {
    const { hits } = analysed(onGrid([0, 1, 4, 8, 15, 22, 32, 34]), EXACT);
    const listed = hits
      .filter(({ family }) => family === 'two-tone-third')
      .map(({ sourceIds, victimId }) => `(${sourceIds.join(',')})->${victimId}`);
    expect(listed.sort()).toEqual(
      ['(4,0)->8', '(4,8)->0', '(8,1)->15', '(8,15)->1', '(15,8)->22', '(15,22)->8'].sort(),
    );
  });

  const even = (n: number): Carrier[] => onGrid(Array.from({ length: n }, (_, step) => step));

  test('evenly spaced carriers give the enumerated totals', () => {
    const sizes = [3, 4, 5, 6, 7, 10, 12, 16];
    const count = (n: number, family: Family, includeOwnVictims = false): number =>
      analysed(even(n), EXACT, { includeOwnVictims }).counts[family];
    expect(sizes.map((n) => count(n, 'two-tone-third'))).toEqual([2, 4, 8, 12, 18, 40, 60, 112]);
    expect(sizes.map((n) => count(n, 'three-tone-third'))).toEqual([0, 4, 12, 28, 52, 200, 380, 1008]);
    expect(sizes.map((n) => count(n, 'three-tone-third', true))).toEqual([1, 6, 16, 34, 61, 220, 410, 1064]);
  });

  // The classical multicarrier count, Westcott, Proc. IEE 1967: formula from memory, agrees for n = 3 to 19.
  test.each(Array.from({ length: 17 }, (_, at) => at + 3))(
    '%i even carriers: each carrier’s hits follow the classical formula',
    (n) => {
      const sign = (power: number): number => (power % 2 === 0 ? 1 : -1);
      const onEach = (guards: Partial<Guards>): readonly number[] =>
        analysed(even(n), { ...NO_GUARDS, ...guards }, { includeOwnVictims: true }).hitsOnCarrier;
      const ranks = Array.from({ length: n }, (_, at) => at + 1);
      expect(onEach({ twoToneThirdKhz: STEP_KHZ })).toEqual(
        ranks.map((r) => (n - 2 - ((1 - sign(n)) * sign(r)) / 2) / 2),
      );
      expect(onEach({ threeToneThirdKhz: STEP_KHZ })).toEqual(
        ranks.map((r) => (r / 2) * (n - r + 1) + ((n - 3) ** 2 - 5) / 4 - ((1 - sign(n)) * sign(n + r)) / 8),
      );
    },
  );
});

// Spans by exhaustive search; unit 100 kHz.
describe('sets that also keep a minimum spacing', () => {
  test('0 4 11 16 24 34 43 49 is clean at 400 kHz spacing and 100 kHz guards, from 470.1 to 475.0 MHz', () => {
    const khz = steps('0 4 11 16 24 34 43 49').map((unit) => 470_100 + 100 * unit);
    expect(khz).toEqual(['470.1', '470.5', '471.2', '471.7', '472.5', '473.5', '474.4', '475.0'].map(khzOf));
    const guards = { ...NO_GUARDS, carrierKhz: 400, twoToneThirdKhz: 100, threeToneThirdKhz: 100 };
    expect(analysed(packsAt(khz), guards).hits).toEqual([]);
    expect(analysed(packsAt(khz), { ...guards, carrierKhz: 401 }).counts.spacing).toBe(1);
  });

  test('0 3 15 24 31 35 41 49 54 is clean at 300 kHz spacing and 100 kHz guards', () => {
    const khz = steps('0 3 15 24 31 35 41 49 54').map((unit) => 470_100 + 100 * unit);
    const guards = { ...NO_GUARDS, carrierKhz: 300, twoToneThirdKhz: 100, threeToneThirdKhz: 100 };
    expect(analysed(packsAt(khz), guards).hits).toEqual([]);
  });
});

// Common practice, no source: no standard fixes these.
test('the suggested guards are 400, 100, 50, off and 200 kHz', () => {
  expect(SUGGESTED_GUARDS).toEqual({
    carrierKhz: 400,
    twoToneThirdKhz: 100,
    threeToneThirdKhz: 50,
    twoToneFifthKhz: 0,
    tvEdgeKhz: 200,
  });
});
