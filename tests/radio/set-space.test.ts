import { expect, test } from 'vitest';
import { type Guards, SUGGESTED_GUARDS } from '../../src/radio/carrier.ts';
import { seededBelow } from '../../src/radio/seeded.ts';
import { choose, membersOf, spaceOf } from '../../src/radio/set-space.ts';
import { bruteForce } from './brute-force.ts';
import { packsAt, randomRoles } from './sample-carriers.ts';

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
