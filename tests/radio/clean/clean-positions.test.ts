import { describe, expect, test } from 'vitest';
import { type Carrier, type Guards, SUGGESTED_GUARDS } from '../../../src/radio/carrier.ts';
import {
  type CleanPosition,
  cleanPositions,
  cleanPositionsInSteps,
} from '../../../src/radio/clean/clean-positions.ts';
import { tvChannel } from '../../../src/radio/day/tv-channels.ts';
import { bruteForce } from '../brute-force.ts';
import { NO_GUARDS, onGrid, packsAt, randomCarriers, randomRoles, STEP_KHZ } from '../sample-carriers.ts';

const ALL_ON: Guards = { ...SUGGESTED_GUARDS, twoToneFifthKhz: 75 };
const BAND = [{ fromKhz: 470_000, toKhz: 478_000, rasterKhz: 25 }];

const positions = (...input: Parameters<typeof cleanPositions>): readonly CleanPosition[] => {
  const result = cleanPositions(...input);
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
};

const wider = (guards: Guards, by: number): Guards => ({
  ...guards,
  carrierKhz: guards.carrierKhz + by,
  twoToneThirdKhz: guards.twoToneThirdKhz + by,
  threeToneThirdKhz: guards.threeToneThirdKhz + by,
  twoToneFifthKhz: guards.twoToneFifthKhz + by,
});

/** Whether a new pack would be in any hit at all. */
function hitsNewcomer(carriers: readonly Carrier[], khz: number, guards: Guards): boolean {
  const newcomer = { id: 'newcomer', name: 'New', khz, victim: true, transmitting: true };
  return bruteForce([...carriers, newcomer], guards).some((hit) => hit.includes('newcomer'));
}

describe('free positions for one more pack', () => {
  test.each([
    [1, 3],
    [2, 6],
    [3, 8],
    [4, 8],
  ])(
    'are exactly those where brute force finds no hit, each with its true margin (seed %i, %i carriers)',
    (seed, n) => {
      const carriers = randomCarriers(seed, n, 8_000, seed > 2).map(
        ({ spacingKhz: _, ...carrier }): Carrier => carrier,
      );
      const found = new Map(positions(carriers, ALL_ON, BAND, []).map((one) => [one.khz, one]));
      for (let khz = 470_000; khz <= 478_000; khz += 25) {
        const clean = found.get(khz);
        expect([khz, clean !== undefined]).toEqual([khz, !hitsNewcomer(carriers, khz, ALL_ON)]);
        if (!clean) continue;
        expect(hitsNewcomer(carriers, khz, wider(ALL_ON, clean.marginKhz))).toBe(false);
        if (clean.marginKhz < 1000)
          expect(hitsNewcomer(carriers, khz, wider(ALL_ON, clean.marginKhz + 1))).toBe(true);
      }
      expect(found.size).toBeGreaterThan(0);
    },
  );

  test.each(Array.from({ length: 24 }, (_, at) => at + 1))(
    'respect who transmits and who listens (seed %i)',
    (seed) => {
      const guards: Guards = {
        ...ALL_ON,
        carrierKhz: 25,
        twoToneThirdKhz: 60,
        twoToneFifthKhz: seed % 2 ? 60 : 0,
      };
      const carriers = randomRoles(seed, 3, 2_000);
      const range = { fromKhz: 469_000, toKhz: 473_000, rasterKhz: 25 };
      const expected = Array.from({ length: 161 }, (_, step) => range.fromKhz + 25 * step).filter(
        (khz) => !hitsNewcomer(carriers, khz, guards),
      );
      expect(
        positions(carriers, guards, [range], [])
          .map(({ khz }) => khz)
          .sort(),
      ).toEqual(expected);
    },
  );

  test('come with most room first and then lowest first', () => {
    const found = positions(packsAt([471_000, 471_400, 472_300]), SUGGESTED_GUARDS, BAND, []);
    const sorted = [...found].sort((a, b) => b.marginKhz - a.marginKhz || a.khz - b.khz);
    expect(found).toEqual(sorted);
    expect(found[0]!.marginKhz).toBeGreaterThan(found.at(-1)!.marginKhz);
  });

  test('in an empty band are all positions, with nothing near', () => {
    expect(
      positions([], SUGGESTED_GUARDS, [{ fromKhz: 470_000, toKhz: 470_025, rasterKhz: 25 }], []),
    ).toEqual([
      { khz: 470_000, marginKhz: 1000, limitedBy: 'nothing-near' },
      { khz: 470_025, marginKhz: 1000, limitedBy: 'nothing-near' },
    ]);
  });

  test('stay a guard away from an occupied TV channel, and the guard itself is far enough', () => {
    const channel = tvChannel('us', 15);
    if (!channel.ok) throw new Error(channel.problem.code);
    const range = [{ fromKhz: 475_700, toKhz: 482_300, rasterKhz: 25 }];
    const found = positions([], SUGGESTED_GUARDS, range, [channel.value]);
    expect(found.map(({ khz }) => khz).sort()).toEqual([
      475_700, 475_725, 475_750, 475_775, 475_800, 482_200, 482_225, 482_250, 482_275, 482_300,
    ]);
    expect(found.at(-1)).toEqual({ khz: 482_200, marginKhz: 0, limitedBy: 'tv-edge' });
  });

  test('keep out of an occupied channel with the edge guard at 0', () => {
    const block = { name: 'Link', fromKhz: 470_000, toKhz: 470_100 };
    const range = [{ fromKhz: 470_000, toKhz: 470_125, rasterKhz: 25 }];
    expect(positions([], NO_GUARDS, range, [block]).map(({ khz }) => khz)).toEqual([
      470_125, 470_000, 470_100,
    ]);
  });

  test('keep the wider of two spacings', () => {
    const range = [{ fromKhz: 470_000, toKhz: 471_000, rasterKhz: 100 }];
    const guards = { ...NO_GUARDS, carrierKhz: 300 };
    const found = (own: number, pack: number) =>
      positions([{ ...packsAt([470_000])[0]!, spacingKhz: own }], guards, range, [], { spacingKhz: pack })
        .map(({ khz }) => khz)
        .sort()[0];
    expect([found(125, 350), found(700, 350), found(125, 125)]).toEqual([470_400, 470_700, 470_200]);
  });

  // Eight marks of the shortest ruler (OEIS A003022): one of them taken out is found again.
  test('include the mark taken out of a Golomb ruler', () => {
    const guards = {
      ...NO_GUARDS,
      carrierKhz: STEP_KHZ,
      twoToneThirdKhz: STEP_KHZ,
      threeToneThirdKhz: STEP_KHZ,
    };
    const range = [{ fromKhz: 480_000, toKhz: 480_000 + 34 * STEP_KHZ, rasterKhz: STEP_KHZ }];
    const found = positions(onGrid([0, 1, 4, 9, 15, 22, 34]), guards, range, []);
    expect(found.map(({ khz }) => (khz - 480_000) / STEP_KHZ)).toContain(32);
  });

  test('of overlapping ranges are told once', () => {
    const range = { fromKhz: 470_000, toKhz: 470_100, rasterKhz: 25 };
    expect(positions([], SUGGESTED_GUARDS, [range, range], [])).toHaveLength(5);
  });

  test('can be looked for in steps that tell how far they are', () => {
    const carriers = randomCarriers(5, 40, 24_000, false);
    const steps = cleanPositionsInSteps(carriers, ALL_ON, BAND, []);
    const shares: number[] = [];
    let step = steps.next();
    for (; !step.done; step = steps.next()) shares.push(step.value);
    expect(step.value).toEqual(cleanPositions(carriers, ALL_ON, BAND, []));
    expect(shares.length).toBeGreaterThan(5);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
  });
});
