import { describe, expect, test, vi } from 'vitest';
import { type Carrier, type Guards, SUGGESTED_GUARDS } from '../../../src/radio/carrier.ts';
import { cleanPositions } from '../../../src/radio/clean/clean-positions.ts';
import { type CleanSet, cleanSet, cleanSetInSteps } from '../../../src/radio/clean/clean-set.ts';
import { rulerSets } from '../../../src/radio/clean/ruler-sets.ts';
import { bruteForce } from '../brute-force.ts';
import { NO_GUARDS, onGrid, packsAt, randomCarriers, STEP_KHZ } from '../sample-carriers.ts';

// Long searches on a machine that may be busy with other tests.
vi.setConfig({ testTimeout: 60_000 });

const found = (...input: Parameters<typeof cleanSet>): CleanSet => {
  const result = cleanSet(...input);
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
};

const UNIT_KHZ = 100;
const EMPTY_BAND = [{ fromKhz: 500_000, toKhz: 560_000, rasterKhz: UNIT_KHZ }];
const guardsOf = (spacing: number, fifth = 0): Guards => ({
  ...NO_GUARDS,
  carrierKhz: spacing * UNIT_KHZ,
  twoToneThirdKhz: UNIT_KHZ,
  threeToneThirdKhz: UNIT_KHZ,
  twoToneFifthKhz: fifth * UNIT_KHZ,
});
const unitSpan = ({ spanKhz }: CleanSet): number => spanKhz / UNIT_KHZ;

/** The hits a set has part in, by brute force. */
const hitsOfSet = (fixed: readonly Carrier[], khz: readonly number[], guards: Guards): string[] => {
  const packs = packsAt(khz).map((pack) => ({ ...pack, id: `new-${pack.id}` }));
  return bruteForce([...fixed, ...packs], guards).filter((hit) => hit.includes('new-'));
};

describe('the shortest set in an empty band, proven', () => {
  // OEIS A003022.
  test.each([
    [2, 1],
    [3, 3],
    [4, 6],
    [5, 11],
    [6, 17],
    [7, 25],
    [8, 34],
    [9, 44],
    [10, 55],
  ])('of %i carriers at one step of guard is the Golomb ruler of length %i', (count, length) => {
    const set = found(count, EMPTY_BAND, guardsOf(1), []);
    expect([unitSpan(set), set.provenShortest]).toEqual([length, true]);
    expect(hitsOfSet([], set.khz, guardsOf(1))).toEqual([]);
  });

  // By exhaustive search.
  test.each([
    [3, 4],
    [4, 8],
    [5, 11],
    [6, 19],
    [7, 25],
    [8, 36],
    [9, 46],
  ])('of %i carriers with 3A-2B kept away as well is %i steps long', (count, length) => {
    const set = found(count, EMPTY_BAND, guardsOf(1, 1), []);
    expect([unitSpan(set), set.provenShortest]).toEqual([length, true]);
    expect(hitsOfSet([], set.khz, guardsOf(1, 1))).toEqual([]);
  });

  // By exhaustive search: unit 100 kHz, both guards one unit, spacing k units.
  const SPACED: [number, number[]][] = [
    [3, [3, 7, 12, 18, 25, 33, 43, 54]],
    [4, [4, 9, 15, 22, 30, 39, 49, 60, 73]],
  ];
  test.each(SPACED)('with carriers %i units apart has the published spans', (spacing, spans) => {
    const sets = spans.map((_, at) => found(at + 2, EMPTY_BAND, guardsOf(spacing), []));
    expect(sets.map(unitSpan)).toEqual(spans);
    expect(sets.every(({ provenShortest }) => provenShortest)).toBe(true);
  });

  test('fits eight carriers at 400 kHz into a 6 MHz TV channel with 100 kHz edges, and not nine', () => {
    const channel = [{ fromKhz: 470_100, toKhz: 475_900, rasterKhz: UNIT_KHZ }];
    expect(found(8, channel, guardsOf(4), []).spanKhz).toBe(4_900);
    expect(cleanSet(9, channel, guardsOf(4), [])).toEqual({
      ok: false,
      problem: { code: 'no-clean-set', count: 9, proven: true },
    });
    expect(found(9, channel, guardsOf(3), []).spanKhz).toBe(5_400);
  });
});

test('with only a spacing to keep, carriers stand shoulder to shoulder', () => {
  const guards = { ...NO_GUARDS, carrierKhz: 400 };
  const set = found(7, EMPTY_BAND, guards, []);
  expect(set).toEqual({
    khz: [500_000, 500_400, 500_800, 501_200, 501_600, 502_000, 502_400],
    spanKhz: 2_400,
    greedySpanKhz: 2_400,
    provenShortest: true,
  });
});

describe('the greedy choice', () => {
  // OEIS A025582: 0 and then the Mian-Chowla sequence A005282 less one.
  test('is the Mian-Chowla sequence, and the set found is narrower from six carriers on', () => {
    const mianChowla = [1, 3, 7, 12, 20, 30, 44, 65, 80, 96, 122, 147, 181, 203, 251];
    const sets = mianChowla.map((_, at) =>
      found(at + 2, EMPTY_BAND, guardsOf(1), [], { stepBudget: 3_000_000 }),
    );
    expect(sets.map(({ greedySpanKhz }) => (greedySpanKhz ?? 0) / UNIT_KHZ)).toEqual(mianChowla);
    expect(sets.slice(4).every((set) => set.spanKhz < (set.greedySpanKhz ?? 0))).toBe(true);
  });

  test.each([
    [12, 96],
    [16, 190],
  ])('is left well behind with %i carriers', (count, atMost) => {
    const set = found(count, EMPTY_BAND, guardsOf(1), [], { stepBudget: 20_000_000 });
    expect(unitSpan(set)).toBeLessThanOrEqual(atMost);
    expect(hitsOfSet([], set.khz, guardsOf(1))).toEqual([]);
  });
});

describe('a set among fixed carriers', () => {
  test.each([
    [1, 4, 6, 4],
    [2, 12, 4, 3],
    [3, 20, 3, 5],
    [4, 6, 8, 2],
  ])(
    'is clean with them and itself, on the raster and in range (seed %i, %i fixed, %i new)',
    (seed, fixedCount, count) => {
      const guards = { ...SUGGESTED_GUARDS, twoToneFifthKhz: seed % 2 ? 50 : 0 };
      const fixed = randomCarriers(seed, fixedCount, 40_000, true);
      const ranges = [
        { fromKhz: 470_000, toKhz: 490_000, rasterKhz: 25 },
        { fromKhz: 500_000, toKhz: 540_000, rasterKhz: 25 },
      ];
      const occupied = [{ name: 'TV', fromKhz: 476_000, toKhz: 482_000 }];
      const set = found(count, ranges, guards, fixed, { occupied, stepBudget: 2_000_000 });
      expect(set.khz).toHaveLength(count);
      expect(hitsOfSet(fixed, set.khz, guards)).toEqual([]);
      for (const khz of set.khz) {
        expect(khz % 25).toBe(0);
        expect(ranges.some(({ fromKhz, toKhz }) => khz >= fromKhz && khz <= toKhz)).toBe(true);
        expect(khz <= 475_800 || khz >= 482_200).toBe(true);
      }
    },
  );

  test.each([1, 2, 3, 4, 5, 6])('is the shortest there is, by trying all triples (seed %i)', (seed) => {
    const guards = { ...SUGGESTED_GUARDS, twoToneFifthKhz: seed % 2 ? 75 : 0 };
    const fixed = randomCarriers(seed + 40, 4, 5_000, true);
    const range = { fromKhz: 470_000, toKhz: 475_000, rasterKhz: 125 };
    const set = cleanSet(3, [range], guards, fixed);
    const spans: number[] = [];
    const positions = cleanPositions(fixed, guards, [range], []);
    if (!positions.ok) throw new Error(positions.problem.code);
    const khz = positions.value.map((position) => position.khz).sort((a, b) => a - b);
    for (const a of khz)
      for (const b of khz)
        for (const c of khz)
          if (a < b && b < c && hitsOfSet(fixed, [a, b, c], guards).length === 0) spans.push(c - a);
    const expected =
      spans.length > 0
        ? { ok: true, value: { spanKhz: Math.min(...spans), provenShortest: true } }
        : { ok: false, problem: { code: 'no-clean-set', proven: true } };
    expect(set).toMatchObject(expected);
  });

  test('completes a Golomb ruler from which three marks were taken', () => {
    const guards = {
      ...guardsOf(1),
      carrierKhz: STEP_KHZ,
      twoToneThirdKhz: STEP_KHZ,
      threeToneThirdKhz: STEP_KHZ,
    };
    const band = [{ fromKhz: 480_000, toKhz: 480_000 + 34 * STEP_KHZ, rasterKhz: STEP_KHZ }];
    const fixed = onGrid([0, 4, 15, 32, 34]);
    const set = found(3, band, guards, fixed);
    expect(hitsOfSet(fixed, set.khz, guards)).toEqual([]);
    expect(set.provenShortest).toBe(true);
    expect(set.spanKhz).toBeLessThanOrEqual(21 * STEP_KHZ);
  });
});

describe('a search', () => {
  const input: Parameters<typeof cleanSet> = [
    10,
    [{ fromKhz: 470_000, toKhz: 500_000, rasterKhz: 25 }],
    SUGGESTED_GUARDS,
    randomCarriers(7, 6, 20_000, false),
    { stepBudget: 3_000_000, seed: 5 },
  ];

  test('gives the same set for the same seed and budget (seed 5)', () => {
    expect(cleanSet(...input)).toEqual(cleanSet(...input));
  });

  test('can be run in steps that tell how far it is', () => {
    const steps = cleanSetInSteps(...input);
    const shares: number[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) shares.push(step.value);
    expect(step.value).toEqual(cleanSet(...input));
    expect(shares.length).toBeGreaterThan(0);
    expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(new Set(shares).size).toBeGreaterThan(1);
  });

  test('keeps the spacing the new packs ask for, or else the one of the plan', () => {
    const guards = { ...NO_GUARDS, carrierKhz: 400 };
    const spans = [undefined, 300, 700].map(
      (spacingKhz) =>
        found(3, EMPTY_BAND, guards, [], spacingKhz === undefined ? {} : { spacingKhz }).spanKhz,
    );
    expect(spans).toEqual([800, 600, 1400]);
  });

  test('looks for as many as 64, and for one takes no span', () => {
    const guards = { ...NO_GUARDS, carrierKhz: 100 };
    expect(found(64, EMPTY_BAND, guards, []).spanKhz).toBe(6_300);
    expect(found(1, EMPTY_BAND, guards, [])).toEqual({
      khz: [500_000],
      spanKhz: 0,
      greedySpanKhz: 0,
      provenShortest: true,
    });
  });

  test('on positions that are not even is the narrowest there is, or proven not to be', () => {
    const band = [
      { fromKhz: 500_000, toKhz: 500_100, rasterKhz: 100 },
      { fromKhz: 500_300, toKhz: 500_300, rasterKhz: 100 },
      { fromKhz: 500_700, toKhz: 500_700, rasterKhz: 100 },
    ];
    const set = found(3, band, guardsOf(1), []);
    expect(hitsOfSet([], set.khz, guardsOf(1))).toEqual([]);
    expect(set).toMatchObject({ khz: [500_000, 500_100, 500_300], spanKhz: 300, provenShortest: true });
    expect(cleanSet(4, band, guardsOf(1), [])).toMatchObject({ ok: true, value: { spanKhz: 700 } });
    expect(cleanSet(5, band, guardsOf(1), [])).toEqual({
      ok: false,
      problem: { code: 'no-clean-set', count: 5, proven: true },
    });
  });

  test.each([0, -5, 1, Number.NaN])('ends, with a clean set at least, on a budget of %d', (stepBudget) => {
    const guards = guardsOf(4);
    const set = found(5, [{ fromKhz: 500_000, toKhz: 504_000, rasterKhz: 100 }], guards, [], { stepBudget });
    expect(hitsOfSet([], set.khz, guards)).toEqual([]);
  });

  test('for one carrier takes the roomiest position', () => {
    const set = found(1, EMPTY_BAND, SUGGESTED_GUARDS, packsAt([500_000]));
    expect(set).toMatchObject({ khz: [501_400], spanKhz: 0, provenShortest: true });
  });

  test('without a free position says so at once', () => {
    const band = [{ fromKhz: 500_000, toKhz: 500_300, rasterKhz: 25 }];
    expect(cleanSet(1, band, SUGGESTED_GUARDS, packsAt([500_100]))).toEqual({
      ok: false,
      problem: { code: 'no-clean-set', count: 1, proven: true },
    });
  });

  test.each([0, -1, 1.5, 65, Number.NaN, Number.POSITIVE_INFINITY])('for %d carriers is refused', (count) => {
    expect(cleanSet(count, EMPTY_BAND, SUGGESTED_GUARDS, [])).toMatchObject({
      ok: false,
      problem: { code: 'count-unusable', most: 64 },
    });
  });

  test('passes on what is wrong with its ranges', () => {
    expect(cleanSet(3, [], SUGGESTED_GUARDS, [])).toEqual({ ok: false, problem: { code: 'ranges-missing' } });
  });
});

// Bose and Chowla, Comment. Math. Helv. 37 (1962/63) 141-147: p elements whose differences modulo p² - 1 all differ.
describe('known rulers', () => {
  test.each([3, 5, 8, 12, 17, 24])(
    'of %i marks have only different differences, none below the gap asked for',
    (count) => {
      for (const ruler of rulerSets(count, 2, 20)) {
        const differences = ruler.flatMap((a, at) => ruler.slice(at + 1).map((b) => b - a));
        expect(new Set(differences).size).toBe((count * (count - 1)) / 2);
        expect(Math.min(...differences)).toBeGreaterThanOrEqual(2);
      }
      expect(rulerSets(count, 1, 20).length).toBeGreaterThan(0);
    },
  );

  test('of 3 and 17 marks include the shortest there are, 3 and 199 (OEIS A003022)', () => {
    expect([rulerSets(3, 1, 1)[0]?.at(-1), rulerSets(17, 1, 1)[0]?.at(-1)]).toEqual([3, 199]);
  });

  test('end with the primes at hand', () => {
    expect(rulerSets(48, 1, 1)).toEqual([]);
  });
});
