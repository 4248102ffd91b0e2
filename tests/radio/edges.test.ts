import { describe, expect, test } from 'vitest';
import { checkKhz, HIGHEST_KHZ, LOWEST_KHZ } from '../../src/facts/kinds/frequency.ts';
import { type Carrier, type Guards, WIDEST_GUARD_KHZ, WIDEST_RANGE_KHZ } from '../../src/radio/carrier.ts';
import { guardsProblem, rangesProblem, spacingProblem } from '../../src/radio/check-input.ts';
import { spreadOut } from '../../src/radio/clean/clean-positions.ts';
import { cleanSet, MOST_IN_A_SET } from '../../src/radio/clean/clean-set.ts';
import { groupOf, groupsOf, rangesFor, spacingOfGroup } from '../../src/radio/day/day-ranges.ts';
import { tvChannel, tvChannelAt, tvChannelsIn } from '../../src/radio/day/tv-channels.ts';
import { analyse } from '../../src/radio/intermodulation/analyse.ts';
import { formatMhz } from '../../src/radio/mhz-text.ts';
import {
  axisFor,
  isWithin,
  lengthOf,
  stretchesOf,
  ticksOf,
  xOf,
} from '../../src/radio/spectrum/frequency-axis.ts';
import { labelRows } from '../../src/radio/spectrum/label-rows.ts';
import { speaker } from '../day/say.ts';
import { NO_GUARDS, packsAt } from './sample-carriers.ts';

// Where a frequency just is, or just is not, on one side of a limit: to the kHz.

const analysed = (khz: readonly number[], guards: Partial<Guards>, more: Partial<Carrier> = {}) => {
  const result = analyse(
    packsAt([...khz]).map((pack) => ({ ...pack, ...more })),
    { ...NO_GUARDS, ...guards },
  );
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
};

describe('what may be typed', () => {
  test('a frequency from 1 MHz to 100 GHz, ends included', () => {
    expect([LOWEST_KHZ, HIGHEST_KHZ]).toEqual([1_000, 100_000_000]);
    expect([LOWEST_KHZ - 1, LOWEST_KHZ, HIGHEST_KHZ, HIGHEST_KHZ + 1].map((khz) => checkKhz(khz).ok)).toEqual(
      [false, true, true, false],
    );
  });

  test('a distance from 0 to 10 MHz, ends included', () => {
    expect(WIDEST_GUARD_KHZ).toBe(10_000);
    const fine = (khz: number) => guardsProblem({ ...NO_GUARDS, carrierKhz: khz }) === undefined;
    expect([-1, 0, WIDEST_GUARD_KHZ, WIDEST_GUARD_KHZ + 1].map(fine)).toEqual([false, true, true, false]);
    const apart = (khz: number) => spacingProblem('A1', khz) === undefined;
    expect([-1, 0, WIDEST_GUARD_KHZ, WIDEST_GUARD_KHZ + 1].map(apart)).toEqual([false, true, true, false]);
  });

  test('a range of no width and one of 2 GHz, with a raster of a kHz', () => {
    const fine = (width: number, rasterKhz = 1) =>
      rangesProblem([{ fromKhz: 470_000, toKhz: 470_000 + width, rasterKhz }]) === undefined;
    expect([-1, 0, WIDEST_RANGE_KHZ, WIDEST_RANGE_KHZ + 1].map((width) => fine(width))).toEqual([
      false,
      true,
      true,
      false,
    ]);
    expect([0, 1].map((raster) => fine(100, raster))).toEqual([false, true]);
  });
});

test('a set of 1 to 64 packs, and none larger', () => {
  // Two places on the raster: enough for the question, and soon looked through.
  const band = [{ fromKhz: 500_000, toKhz: 500_025, rasterKhz: 25 }];
  const code = (count: number) => {
    const set = cleanSet(count, band, NO_GUARDS, []);
    return set.ok ? 'found' : set.problem.code;
  };
  expect(MOST_IN_A_SET).toBe(64);
  expect([0, 1, 2, MOST_IN_A_SET, MOST_IN_A_SET + 1].map(code)).toEqual([
    'count-unusable',
    'found',
    'found',
    'no-clean-set',
    'count-unusable',
  ]);
});

describe('a hit', () => {
  const hits = (khz: readonly number[], guards: Partial<Guards>) => analysed(khz, guards).hits.length;

  test('of spacing needs less than the guard between two carriers', () => {
    expect(hits([500_000, 500_350], { carrierKhz: 350 })).toBe(0);
    expect(hits([500_000, 500_349], { carrierKhz: 350 })).toBe(1);
  });

  test('of spacing takes the wider of what two carriers ask for', () => {
    const apart = (khz: number) =>
      analyse(
        packsAt([500_000, 500_000 + khz]).map((pack, at) => (at === 0 ? { ...pack, spacingKhz: 600 } : pack)),
        { ...NO_GUARDS, carrierKhz: 350 },
      );
    expect(apart(600)).toMatchObject({ value: { counts: { spacing: 0 } } });
    expect(apart(599)).toMatchObject({ value: { counts: { spacing: 1 } } });
  });

  // 2 × 501.000 - 500.000 = 502.000; 500.000 + 501.000 - 490.000 = 511.000; 3 × 501.000 - 2 × 500.000 = 503.000.
  test.each([
    ['twoToneThirdKhz', [500_000, 501_000], 502_000],
    ['threeToneThirdKhz', [490_000, 500_000, 501_000], 511_000],
    ['twoToneFifthKhz', [500_000, 501_000], 503_000],
  ] as const)('by %s needs less than the guard, on either side', (guard, sources, product) => {
    const on = (khz: number) =>
      analysed([...sources, khz], { [guard]: 50 }).hits.filter(
        ({ victimId }) => victimId === `c${sources.length}`,
      ).length;
    expect([product - 50, product - 49, product + 49, product + 50].map(on)).toEqual([0, 1, 1, 0]);
  });

  test('is listed up to as many as are asked for, and then it is said that there are more', () => {
    const options = (listedPerFamily: number) => {
      const result = analyse(
        packsAt([500_000, 500_100, 500_200]),
        { ...NO_GUARDS, carrierKhz: 150 },
        { listedPerFamily },
      );
      return result.ok ? [result.value.hits.length, result.value.listIsComplete] : [];
    };
    expect([options(1), options(2), options(3)]).toEqual([
      [1, false],
      [2, true],
      [2, true],
    ]);
  });

  test('is held up to as many as there is room for', () => {
    const held = (mostHeld: number) => {
      const result = analyse(
        packsAt([500_000, 500_100, 500_200]),
        { ...NO_GUARDS, carrierKhz: 150 },
        { mostHeld },
      );
      return result.ok && result.value.held !== undefined;
    };
    expect([1, 2].map(held)).toEqual([false, true]);
  });
});

describe('packs of one group', () => {
  test.each([
    ['A12', 'A'],
    ['A 12', 'A'],
    ['12', ''],
    ['A', 'A'],
    ['2A3', '2A'],
    ['', ''],
  ])('%j is of %j', (name, group) => {
    expect(groupOf(name)).toBe(group);
  });

  const phone = () => {
    const said = speaker();
    const pack = (name: string, order: number) => ({
      part: name,
      fields: { type: 'transmitter' as const, name, order },
    });
    said.say({ kind: 'rig-laid', parts: ['A1', 'B1', 'A2', 'C1'].map(pack) });
    const range = (band: string, group: string, spacingKhz: number | null = null) =>
      said.say({
        kind: 'band-described',
        band,
        fields: { use: 'tunable', fromKhz: 470_000, toKhz: 480_000, group, spacingKhz },
      });
    range('all', '', 300);
    range('a', 'A', 400);
    range('a2', 'A', 500);
    range('b', 'B');
    return said.day();
  };

  test('stand together in the order of the rig', () => {
    expect(groupsOf(phone())).toEqual([
      { group: 'A', packs: ['A1', 'A2'] },
      { group: 'B', packs: ['B1'] },
      { group: 'C', packs: ['C1'] },
    ]);
  });

  test('have the ranges of their group alone, and those for all only where it has none', () => {
    const ids = (name: string) => rangesFor(phone(), name).map(({ id }) => id);
    expect([ids('A1'), ids('B9'), ids('C1')]).toEqual([['a', 'a2'], ['b'], ['all']]);
    // A pack called by its number alone is of no group, and has what all have.
    expect(ids('7')).toEqual(['all']);
  });

  test('ask for the widest spacing of their ranges', () => {
    const spacing = (name: string) => spacingOfGroup(phone(), name);
    expect([spacing('A1'), spacing('B1'), spacing('C1')]).toEqual([500, undefined, 300]);
  });
});

describe('the picture', () => {
  const at = (khz: readonly number[]) => stretchesOf(analysed(khz, {}));

  test('parts where 6 MHz of nothing lie between carriers, and not a kHz less', () => {
    expect(at([470_000, 476_000])).toHaveLength(2);
    expect(at([470_000, 475_999])).toHaveLength(1);
  });

  test('has four stretches at most, parted at the widest gaps', () => {
    const five = at([470_000, 476_000, 483_000, 491_000, 500_000]);
    expect(five.map(({ fromKhz, toKhz }) => [fromKhz, toKhz])).toEqual([
      [470_000, 476_000],
      [483_000, 483_000],
      [491_000, 491_000],
      [500_000, 500_000],
    ]);
  });

  test('holds both ends of a stretch', () => {
    const stretch = { fromKhz: 10, toKhz: 20 };
    expect([9, 10, 20, 21].map((khz) => isWithin(stretch, khz))).toEqual([false, true, true, false]);
  });

  test('needs a pixel', () => {
    const analysis = analysed([470_000], {});
    expect([0.9, 1].map((width) => axisFor(analysis, width) !== undefined)).toEqual([false, true]);
  });

  test('leaves room of half a MHz, of the widest guard, or of a twentieth of its width', () => {
    const room = (khz: readonly number[], guards: Partial<Guards> = {}, more: Partial<Carrier> = {}) => {
      const axis = axisFor(analysed(khz, guards, more), 100)!;
      return [khz[0]! - axis.fromKhz, axis.toKhz - khz.at(-1)!];
    };
    expect(room([470_000])).toEqual([500, 500]);
    expect(room([470_000], { carrierKhz: 501 })).toEqual([501, 501]);
    expect(room([470_000], {}, { spacingKhz: 700 })).toEqual([700, 700]);
    expect(room([470_000, 482_011])).toEqual([601, 601]);
  });

  test('has ticks at round frequencies from the first to the last that fit, 64 px apart or more', () => {
    const ticks = (fromKhz: number, toKhz: number, widthPx: number) =>
      ticksOf({ fromKhz, toKhz, widthPx }).map(({ khz }) => khz);
    // 1000 kHz on 640 px: a tick of 100 kHz takes 64 px.
    expect(ticks(470_000, 471_000, 640)).toEqual(
      Array.from({ length: 11 }, (_, step) => 470_000 + 100 * step),
    );
    expect(ticks(470_000, 471_000, 639)).toEqual([470_000, 470_200, 470_400, 470_600, 470_800, 471_000]);
    expect(ticks(470_001, 470_999, 630)).toEqual([470_200, 470_400, 470_600, 470_800]);
  });

  test('is measured in tenths of a pixel, to the nearest', () => {
    const axis = { fromKhz: 0, toKhz: 1000, widthPx: 100 };
    expect([1, 4, 5, 6, 1000].map((khz) => xOf(axis, khz))).toEqual([0.1, 0.4, 0.5, 0.6, 100]);
    const narrow = { fromKhz: 0, toKhz: 1000, widthPx: 26 };
    // 3 kHz are 0.078 px, 2 kHz 0.052, 1 kHz 0.026.
    expect([3, 2, 1].map((khz) => lengthOf(narrow, khz))).toEqual([0.1, 0.1, 0]);
  });

  test('of a few pixels has a tick at the round frequency that is as wide as all of it', () => {
    // 1,010 GHz on 3 px: no step in the table takes 64 px of it.
    const wide = { fromKhz: 1, toKhz: 1_010_000_001, widthPx: 3 };
    expect(ticksOf(wide)).toEqual([]);
    expect(ticksOf({ ...wide, fromKhz: 0 }).map(({ khz }) => khz)).toEqual([0]);
  });

  test('puts labels that just touch in one row, and keeps them inside', () => {
    const rows = (second: number) =>
      labelRows(
        [
          { middlePx: 20, widthPx: 40 },
          { middlePx: second, widthPx: 40 },
        ],
        200,
        4,
      ).map(({ row }) => row);
    expect(rows(64)).toEqual([0, 0]);
    expect(rows(63)).toEqual([0, 1]);
    const lefts = labelRows(
      [
        { middlePx: 0, widthPx: 40 },
        { middlePx: 200, widthPx: 40 },
      ],
      200,
      4,
    );
    expect(lefts.map(({ leftPx }) => leftPx)).toEqual([0, 160]);
  });
});

test('positions that are as far apart as asked are two, and a kHz less is one', () => {
  const at = (...khz: number[]) => khz.map((one) => ({ khz: one, marginKhz: 0 })) as never;
  const chosen = (apart: number, most = 9) =>
    spreadOut(at(500_000, 500_100, 500_300), apart, most).map(({ khz }) => khz);
  expect(chosen(100)).toEqual([500_000, 500_100, 500_300]);
  expect(chosen(101)).toEqual([500_000, 500_300]);
  expect([chosen(1, 0), chosen(1, 2)]).toEqual([[], [500_000, 500_100]]);
});

test('a kHz is written with all its digits', () => {
  expect([0, 1, 999, 1000, 470_100, -1, -1000].map(formatMhz)).toEqual([
    '0.000',
    '0.001',
    '0.999',
    '1.000',
    '470.100',
    '-0.001',
    '-1.000',
  ]);
});

// US: 47 CFR 73.603(a). 8 MHz: lower edge 470 + 8 (n - 21) MHz in ITU Region 1.
describe('TV channels', () => {
  test('are known to the first and last of each run', () => {
    const known = (raster: 'us' | 'uhf-8-mhz', ...channels: number[]) =>
      channels.filter((channel) => tvChannel(raster, channel).ok);
    expect(known('us', 1, 2, 4, 5, 6, 7, 13, 14, 37, 38)).toEqual([2, 4, 5, 6, 7, 13, 14, 37]);
    expect(known('uhf-8-mhz', 20, 21, 69, 70)).toEqual([21, 69]);
  });

  test('hold their lower edge, and the upper channel has the one they share', () => {
    expect([469_999, 470_000, 475_999, 476_000].map((khz) => tvChannelAt('us', khz))).toEqual([
      undefined,
      14,
      14,
      15,
    ]);
    expect([613_999, 614_000].map((khz) => tvChannelAt('us', khz))).toEqual([37, undefined]);
    expect([861_999, 862_000].map((khz) => tvChannelAt('uhf-8-mhz', khz))).toEqual([69, undefined]);
  });

  test('share a stretch that reaches a kHz into them, and none that only touches', () => {
    expect(tvChannelsIn('us', 476_000, 482_000)).toEqual([15]);
    expect(tvChannelsIn('us', 475_999, 482_000)).toEqual([14, 15]);
    expect(tvChannelsIn('us', 476_000, 482_001)).toEqual([15, 16]);
  });
});
