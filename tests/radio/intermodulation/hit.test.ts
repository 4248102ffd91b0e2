import { describe, expect, test } from 'vitest';
import { type Carrier, type Guards, SUGGESTED_GUARDS, spacingBetween } from '../../../src/radio/carrier.ts';
import { analyse } from '../../../src/radio/intermodulation/analyse.ts';
import {
  type Analysis,
  type AnalysisOptions,
  isInBlock,
  outsideBlock,
} from '../../../src/radio/intermodulation/analysis.ts';
import {
  FAMILIES,
  familyOf,
  firstSourceOf,
  involves,
  packHit,
  sourcesOf,
  unpackHit,
  victimOf,
} from '../../../src/radio/intermodulation/hit.ts';
import { addHit, newHitList } from '../../../src/radio/intermodulation/hit-list.ts';
import { recheck } from '../../../src/radio/intermodulation/recheck.ts';
import { NO_GUARDS, packsAt, randomCarriers } from '../sample-carriers.ts';

function analysed(
  carriers: readonly Carrier[],
  guards: Guards,
  options: Partial<AnalysisOptions> = {},
): Analysis {
  const result = analyse(carriers, guards, options);
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
}

describe('a packed hit', () => {
  test.each([
    [0, 0, 0, 0, 0, 0],
    [0, 16_383, 511, 0, 0, 511],
    [1, 9_999, 3, 511, 0, 4],
    [2, 9_999, 511, 510, 509, 508],
    [3, 16_383, 511, 1, 0, 2],
  ])(
    'of family %i, distance %i and places %i %i %i on %i keeps all of them',
    (family, distance, a, b, c, d) => {
      const hit = packHit(family, distance, a, b, c, d);
      expect([familyOf(hit), firstSourceOf(hit), victimOf(hit)]).toEqual([family, a, d]);
      expect(sourcesOf(hit)).toEqual([a, b, c].slice(0, [1, 2, 3, 2][family]));
    },
  );

  test('sorts by family, then by distance, then by its first source', () => {
    const hits = [
      packHit(0, 5, 511, 0, 0, 511),
      packHit(0, 6, 0, 0, 0, 0),
      packHit(1, 0, 7, 511, 0, 511),
      packHit(1, 0, 8, 0, 0, 0),
      packHit(1, 1, 0, 0, 0, 0),
      packHit(3, 0, 0, 0, 0, 0),
    ];
    expect([...Float64Array.from(hits.toReversed()).sort()]).toEqual(hits);
  });

  test('involves its victim and as many sources as its family has', () => {
    const placesOf = (family: number) =>
      [1, 2, 3, 4, 5].filter((place) => involves(packHit(family, 9, 1, 2, 3, 4), place));
    expect(FAMILIES.map((_, family) => placesOf(family))).toEqual([
      [1, 4],
      [1, 2, 4],
      [1, 2, 3, 4],
      [1, 2, 4],
    ]);
  });

  test('is put into words with its product worked out', () => {
    const carriers = packsAt([500_000, 500_300, 500_500, 501_000]);
    const product = (family: number) => unpackHit(packHit(family, 0, 0, 1, 2, 3), carriers);
    expect(FAMILIES.map((_, family) => product(family).productKhz)).toEqual([
      500_000, 499_700, 499_800, 499_400,
    ]);
    expect(product(2)).toEqual({
      family: 'three-tone-third',
      sourceIds: ['c0', 'c1', 'c2'],
      productKhz: 499_800,
      victimId: 'c3',
      distanceKhz: 1200,
    });
  });
});

describe('a list of hits', () => {
  test('is full with one more than it may hold', () => {
    const list = newHitList();
    for (const _ of [1, 2]) addHit(list, 2, 0, 1, 0, 0, 0, 0);
    expect([list.hits.length, list.isFull]).toEqual([2, false]);
    addHit(list, 2, 0, 1, 0, 0, 0, 0);
    expect([list.hits.length, list.isFull]).toEqual([2, true]);
  });

  const carriers = randomCarriers(11, 12, 6_000, true);
  const whole = analysed(carriers, SUGGESTED_GUARDS, { listedPerFamily: 1_000_000 });
  const total = whole.hits.length;

  test('holds them all where there is just room, and counts them the same where there is not', () => {
    const held = analysed(carriers, SUGGESTED_GUARDS, { mostHeld: total });
    const cut = analysed(carriers, SUGGESTED_GUARDS, { mostHeld: total - 1 });
    expect(total).toBeGreaterThan(20);
    expect(held.held).toHaveLength(total);
    expect(cut.held).toBeUndefined();
    for (const one of [held, cut]) {
      expect(one.counts).toEqual(whole.counts);
      expect(one.hitsOnCarrier).toEqual(whole.hitsOnCarrier);
    }
  });

  test('lists the nearest of each family and says whether any is left out', () => {
    const most = Math.max(...Object.values(whole.counts));
    expect(analysed(carriers, SUGGESTED_GUARDS, { listedPerFamily: most }).listIsComplete).toBe(true);
    const cut = analysed(carriers, SUGGESTED_GUARDS, { listedPerFamily: most - 1 });
    expect(cut.listIsComplete).toBe(false);
    expect(cut.hits).toHaveLength(total - 1);
    const two = analysed(carriers, SUGGESTED_GUARDS, { listedPerFamily: 2 });
    for (const family of FAMILIES) {
      const all = whole.hits.filter((hit) => hit.family === family);
      expect(two.hits.filter((hit) => hit.family === family)).toEqual(all.slice(0, 2));
    }
  });

  test('is the same after one carrier moved as from scratch, however many it may hold', () => {
    for (const mostHeld of [total - 1, total, total + 1, 1_000_000])
      for (const khz of [470_000, carriers[3]!.khz, 472_000]) {
        const options = { mostHeld, listedPerFamily: 5 };
        const moved = { ...carriers[3]!, khz };
        expect(recheck(analysed(carriers, SUGGESTED_GUARDS, options), moved)).toEqual({
          ok: true,
          value: analysed(carriers.with(3, moved), SUGGESTED_GUARDS, options),
        });
      }
  });

  test('is not made of a carrier that is not in the plan, or of one that cannot be', () => {
    const [first] = carriers;
    expect(recheck(whole, { ...first!, id: 'nobody' })).toEqual({
      ok: false,
      problem: { code: 'carrier-unknown', id: 'nobody' },
    });
    expect(recheck(whole, { ...first!, khz: 0.5 })).toMatchObject({ ok: false });
  });
});

describe('occupied spectrum', () => {
  const block = { name: 'TV', fromKhz: 470_000, toKhz: 476_000 };

  test('is hit inside it, and nearer to its edge than the guard', () => {
    expect([469_999, 470_000, 473_000, 476_000, 476_001].map((khz) => isInBlock(block, khz, 0))).toEqual([
      false,
      false,
      true,
      false,
      false,
    ]);
    expect([469_800, 469_801, 476_199, 476_200].map((khz) => isInBlock(block, khz, 200))).toEqual([
      false,
      true,
      true,
      false,
    ]);
    expect([469_900, 470_000, 473_000, 476_000, 476_100].map((khz) => outsideBlock(block, khz))).toEqual([
      100, 0, 0, 0, 100,
    ]);
  });

  test('is hit by what transmits or listens, with how far outside it stands', () => {
    const carriers = packsAt([469_850, 473_000, 476_200, 470_500]).map((pack, at) => ({
      ...pack,
      victim: at !== 1 && at !== 3,
      transmitting: at !== 0 && at !== 3,
    }));
    const { edgeHits } = analysed(carriers, { ...NO_GUARDS, tvEdgeKhz: 200 }, { occupied: [block] });
    expect(edgeHits).toEqual([
      { carrierId: 'c0', blockName: 'TV', distanceKhz: 150 },
      { carrierId: 'c1', blockName: 'TV', distanceKhz: 0 },
    ]);
  });
});

describe('spacing', () => {
  test('is the wider of what each asks for, and the plan for who asks nothing', () => {
    const guards = { ...NO_GUARDS, carrierKhz: 400 };
    const between = (a?: number, b?: number) =>
      spacingBetween(
        a === undefined ? {} : { spacingKhz: a },
        b === undefined ? {} : { spacingKhz: b },
        guards,
      );
    expect([between(), between(500), between(300, 350), between(300), between(0, 600)]).toEqual([
      400, 500, 350, 400, 600,
    ]);
  });

  test('is hit on either side that listens, the transmitting side being the source', () => {
    const roles = (a: Partial<Carrier>, b: Partial<Carrier>) => {
      const [one, two] = packsAt([500_000, 500_399]);
      const { hits, hitsOnCarrier } = analysed(
        [
          { ...one!, ...a },
          { ...two!, ...b },
        ],
        {
          ...NO_GUARDS,
          carrierKhz: 400,
        },
      );
      return [hits.map(({ sourceIds, victimId }) => `${sourceIds}>${victimId}`), hitsOnCarrier];
    };
    expect(roles({}, {})).toEqual([['c0>c1'], [1, 1]]);
    expect(roles({ transmitting: false }, {})).toEqual([['c1>c0'], [1, 0]]);
    expect(roles({ victim: false }, {})).toEqual([['c0>c1'], [0, 1]]);
    expect(roles({}, { victim: false })).toEqual([['c1>c0'], [1, 0]]);
    expect(roles({ transmitting: false }, { transmitting: false })).toEqual([[], [0, 0]]);
    expect(roles({ victim: false }, { victim: false })).toEqual([[], [0, 0]]);
    const apart = analysed(packsAt([500_000, 500_400]), { ...NO_GUARDS, carrierKhz: 400 });
    expect(apart.hits).toEqual([]);
  });
});
