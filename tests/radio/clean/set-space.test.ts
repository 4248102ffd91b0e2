import { describe, expect, test } from 'vitest';
import { type Guards, SUGGESTED_GUARDS } from '../../../src/radio/carrier.ts';
import { seededBelow } from '../../../src/radio/clean/seeded.ts';
import { choose, membersOf, spaceOf } from '../../../src/radio/clean/set-space.ts';
import { bruteForce } from '../brute-force.ts';
import { NO_GUARDS, packsAt, randomRoles } from '../sample-carriers.ts';

test.each(Array.from({ length: 24 }, (_, at) => at + 1))(
  'choosing carriers rules out exactly the positions that brute force finds hit together with them (seed %i)',
  (seed) => {
    const guards: Guards = {
      ...SUGGESTED_GUARDS,
      carrierKhz: 50,
      twoToneThirdKhz: 60,
      twoToneFifthKhz: seed % 2 ? 60 : 0,
    };
    const fixed = randomRoles(seed, 1 + (seed % 3), 3_000).map((one) => ({ ...one, spacingKhz: 0 }));
    const grid = Array.from({ length: 161 }, (_, step) => 469_000 + 25 * step);
    const space = spaceOf(grid, guards, guards.carrierKhz, fixed);
    const members = membersOf(space, 2);
    const blocked = new Uint8Array(grid.length);
    const below = seededBelow(seed);
    const chosen = [grid[below(grid.length)]!, grid[below(grid.length)]!];
    for (const khz of chosen) choose(space, members, blocked, khz, grid[0]! - 1, { left: 1 });
    const [one, two] = packsAt(chosen);
    const expected = grid.filter((khz) => {
      const last = { ...one!, id: 'last', khz };
      const set = [...fixed, { ...one!, id: 'first' }, { ...two!, id: 'second' }, last];
      return bruteForce(set, guards).some((hit) => hit.includes('last') && /first|second/.test(hit));
    });
    expect(grid.filter((_, at) => blocked[at] === 1)).toEqual(expected);
  },
);

describe('a space of positions', () => {
  const guards: Guards = { ...NO_GUARDS, carrierKhz: 100, twoToneThirdKhz: 100 };
  const grid = [500_000, 500_025, 500_100, 500_300, 500_325, 500_400];
  const space = spaceOf(grid.toReversed(), guards, 100, []);

  test('knows the first position at or above every kHz', () => {
    expect([...space.khz]).toEqual(grid);
    expect(space.firstAt).toHaveLength(401);
    for (let khz = 500_000; khz <= 500_400; khz += 1)
      expect(space.firstAt[khz - 500_000]).toBe(grid.findIndex((at) => at >= khz));
    expect([...spaceOf([], guards, 100, []).khz]).toEqual([]);
  });

  test('rules out only what lies above where is asked, and a guard away is far enough', () => {
    const blockedAbove = (aboveKhz: number) => {
      const blocked = new Uint8Array(grid.length);
      choose(space, membersOf(space, 1), blocked, 500_300, aboveKhz, { left: 1000 });
      return grid.filter((_, at) => blocked[at] === 1);
    };
    expect(blockedAbove(499_999)).toEqual([500_300, 500_325]);
    expect(blockedAbove(500_300)).toEqual([500_325]);
    expect(blockedAbove(500_325)).toEqual([]);
  });

  test('takes a spacing of none for the position itself', () => {
    const bare = spaceOf(grid, NO_GUARDS, 0, []);
    const blocked = new Uint8Array(grid.length);
    choose(bare, membersOf(bare, 1), blocked, 500_100, 499_999, { left: 1000 });
    expect(grid.filter((_, at) => blocked[at] === 1)).toEqual([500_100]);
  });

  test('counts the members of a set: who is fixed and takes part, then who is chosen, in both roles', () => {
    const [one, two, three] = packsAt([500_000, 501_000, 502_000]);
    const fixed = [
      { ...one!, transmitting: false },
      { ...two!, victim: false },
      { ...three!, victim: false, transmitting: false },
    ];
    const among = spaceOf(grid, guards, 100, fixed);
    const members = membersOf(among, 2);
    expect(members.count).toBe(2);
    const budget = { left: 1000 };
    choose(among, members, new Uint8Array(grid.length), 500_300, 0, budget);
    expect(members.count).toBe(3);
    expect([...members.khz]).toEqual([500_000, 501_000, 500_300, 0]);
    expect([...members.transmits].slice(0, 3)).toEqual([0, 1, 1]);
    expect([...members.listens].slice(0, 3)).toEqual([1, 0, 1]);
    expect(budget.left).toBeLessThan(1000);
  });
});
