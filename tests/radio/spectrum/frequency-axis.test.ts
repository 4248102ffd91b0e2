import { describe, expect, test } from 'vitest';
import type { Carrier, Guards } from '../../../src/radio/carrier.ts';
import { analyse } from '../../../src/radio/intermodulation/analyse.ts';
import type { Analysis, AnalysisOptions } from '../../../src/radio/intermodulation/analysis.ts';
import { axisFor, lengthOf, stretchesOf, ticksOf, xOf } from '../../../src/radio/spectrum/frequency-axis.ts';
import { labelRows } from '../../../src/radio/spectrum/label-rows.ts';
import { productColumns } from '../../../src/radio/spectrum/product-columns.ts';
import { spectrumLayout } from '../../../src/radio/spectrum/spectrum-layout.ts';
import { NO_GUARDS, packsAt } from '../sample-carriers.ts';

function analysed(
  carriers: readonly Carrier[],
  guards: Partial<Guards> = {},
  options: Partial<AnalysisOptions> = {},
): Analysis {
  const result = analyse(carriers, { ...NO_GUARDS, ...guards }, options);
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
}

describe('stretches of spectrum', () => {
  const stretches = (...mhz: number[]): [number, number][] =>
    stretchesOf(analysed(packsAt(mhz.map((one) => one * 1000)))).map(({ fromKhz, toKhz }) => [
      fromKhz / 1000,
      toKhz / 1000,
    ]);

  test('are one where less than 6 MHz of nothing lie between', () => {
    expect(stretches(480, 470, 475.999, 485.999)).toEqual([[470, 485.999]]);
    expect(stretches(470, 476)).toEqual([
      [470, 470],
      [476, 476],
    ]);
    expect(stretches()).toEqual([]);
    expect(stretches(500)).toEqual([[500, 500]]);
  });

  test('are four at most, split at the widest gaps, in order', () => {
    expect(stretches(470, 490, 497, 517, 530, 540)).toEqual([
      [470, 470],
      [490, 497],
      [517, 517],
      [530, 540],
    ]);
  });
});

describe('the axis', () => {
  const axis = (guards: Partial<Guards>, ...khz: number[]) => axisFor(analysed(packsAt(khz), guards), 100);

  test('leaves half a MHz, the widest guard or a twentieth of the span on both sides', () => {
    expect(axis({}, 500_000)).toEqual({ fromKhz: 499_500, toKhz: 500_500, widthPx: 100 });
    expect(axis({ twoToneThirdKhz: 501 }, 500_000)).toMatchObject({ fromKhz: 499_499, toKhz: 500_501 });
    expect(axis({}, 500_000, 510_020)).toMatchObject({ fromKhz: 499_499, toKhz: 510_521 });
    expect(axis({}, 500_000, 510_000)).toMatchObject({ fromKhz: 499_500, toKhz: 510_500 });
    const own = packsAt([500_000]).map((pack) => ({ ...pack, spacingKhz: 700 }));
    expect(axisFor(analysed(own), 100)).toMatchObject({ fromKhz: 499_300, toKhz: 500_700 });
  });

  test('is none without a carrier or a width', () => {
    const one = analysed(packsAt([500_000]));
    for (const width of [0, 0.9, -5, Number.NaN, Number.POSITIVE_INFINITY])
      expect(axisFor(one, width)).toBeUndefined();
    expect(axisFor(one, 1)).toBeDefined();
    expect(axisFor(analysed([]), 100)).toBeUndefined();
    expect(axisFor(one, 100, { fromKhz: 500_001, toKhz: 600_000 })).toBeUndefined();
    expect(axisFor(one, 100, { fromKhz: 500_000, toKhz: 500_000 })).toBeDefined();
  });

  test('gives places and lengths in tenths of a pixel', () => {
    const scale = { fromKhz: 500_000, toKhz: 500_300, widthPx: 100 };
    expect([xOf(scale, 500_000), xOf(scale, 500_100), xOf(scale, 500_300)]).toEqual([0, 33.3, 100]);
    expect([lengthOf(scale, 200), lengthOf(scale, 0)]).toEqual([66.7, 0]);
  });

  test.each([
    [500_000, 501_000, 640, '500 500.1 500.2 500.3 500.4 500.5 500.6 500.7 500.8 500.9 501'],
    [500_000, 501_000, 639, '500 500.2 500.4 500.6 500.8 501'],
    [499_999, 500_999, 640, '500 500.1 500.2 500.3 500.4 500.5 500.6 500.7 500.8 500.9'],
    [500_001, 501_001, 640, '500.1 500.2 500.3 500.4 500.5 500.6 500.7 500.8 500.9 501'],
    [499_875, 500_525, 416, '499.9 500 500.1 500.2 500.3 500.4 500.5'],
    [500_000, 500_002, 128, '500 500.001 500.002'],
    [470_000, 700_000, 320, '500 550 600 650 700'],
  ])('from %i to %i kHz on %i px is marked at %s', (fromKhz, toKhz, widthPx, labels) => {
    const ticks = ticksOf({ fromKhz, toKhz, widthPx });
    expect(ticks.map(({ label }) => label).join(' ')).toBe(labels);
    for (const { khz, xPx } of ticks) expect(xPx).toBe(xOf({ fromKhz, toKhz, widthPx }, khz));
    for (const [at, { xPx }] of ticks.slice(1).entries())
      expect(xPx - ticks[at]!.xPx).toBeGreaterThanOrEqual(63.9);
  });
});

describe('labels', () => {
  test('keep to the picture and to their rows', () => {
    const label = (middlePx: number, widthPx = 40) => ({ middlePx, widthPx });
    expect(labelRows([label(50), label(50)], 100, 4)).toEqual([
      { leftPx: 30, row: 0 },
      { leftPx: 30, row: 1 },
    ]);
    expect(labelRows([label(0), label(100), label(10, 300)], 100, 4)).toEqual([
      { leftPx: 0, row: 0 },
      { leftPx: 60, row: 0 },
      { leftPx: 0, row: 1 },
    ]);
    // The gap belongs to the room a label takes.
    expect(labelRows([label(20), label(64)], 200, 4).map(({ row }) => row)).toEqual([0, 0]);
    expect(labelRows([label(20), label(63.9)], 200, 4).map(({ row }) => row)).toEqual([0, 1]);
    // The lowest free row, and the order given.
    expect(labelRows([label(120), label(30, 60), label(40, 60)], 300, 0).map(({ row }) => row)).toEqual([
      0, 0, 1,
    ]);
    expect(labelRows([], 100, 4)).toEqual([]);
  });

  test('are as wide as their letters, one at least, also with a letter of no width', () => {
    const carriers = packsAt([500_000, 501_000]).map((pack, at) => ({
      ...pack,
      name: at === 0 ? '' : 'A音🎧',
    }));
    const widths = (letterPx?: number) =>
      spectrumLayout(analysed(carriers), 500, letterPx).carriers.map(({ labelWidthPx }) => labelWidthPx);
    expect(widths()).toEqual([7, 21]);
    expect(widths(9)).toEqual([9, 27]);
    for (const none of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) expect(widths(none)).toEqual([7, 21]);
  });
});

describe('a stretch of the picture', () => {
  const analysis = analysed(
    packsAt([470_000, 471_000, 472_050, 530_000]),
    { carrierKhz: 100, twoToneThirdKhz: 100 },
    { occupied: [{ name: 'TV', fromKhz: 471_500, toKhz: 480_000 }] },
  );
  const [first] = stretchesOf(analysis);

  test('has its own carriers, guards, hits and blocks, cut to its axis', () => {
    const layout = spectrumLayout(analysis, 305, 7, first);
    expect(layout.axis).toEqual({ fromKhz: 469_500, toKhz: 472_550, widthPx: 305 });
    expect(layout.carriers.map(({ khz }) => khz)).toEqual([470_000, 471_000, 472_050]);
    expect(new Set(layout.guards.map(({ carrierId }) => carrierId))).toEqual(new Set(['c0', 'c1', 'c2']));
    expect(layout.blocks).toEqual([{ name: 'TV', xPx: 200, widthPx: 105 }]);
    expect(layout.hits.map(({ hit, xPx, victimXPx }) => [hit.victimId, xPx, victimXPx])).toEqual([
      ['c2', 250, 255],
      ['c0', 45, 50],
    ]);
    expect(spectrumLayout(analysis, 305, 7, { fromKhz: 530_000, toKhz: 530_000 }).hits).toEqual([]);
  });

  test('leaves a block out that only touches its axis', () => {
    const touching = analysed(
      packsAt([500_000]),
      {},
      {
        occupied: [
          { name: 'below', fromKhz: 490_000, toKhz: 499_500 },
          { name: 'above', fromKhz: 500_500, toKhz: 510_000 },
          { name: 'in', fromKhz: 490_000, toKhz: 499_501 },
        ],
      },
    );
    expect(spectrumLayout(touching, 1000).blocks).toEqual([{ name: 'in', xPx: 0, widthPx: 1 }]);
  });
});

describe('columns of products', () => {
  const carriers = packsAt([500_000, 500_400]);

  test('stand at the pixel they begin in, ends of the axis included', () => {
    const analysis = analysed(carriers, { twoToneThirdKhz: 1 });
    const at = (fromKhz: number, toKhz: number, widthPx: number) =>
      productColumns(analysis, { fromKhz, toKhz, widthPx }).map(({ xPx, count }) => [xPx, count]);
    expect(at(499_600, 500_800, 120)).toEqual([
      [0, 1],
      [120, 1],
    ]);
    expect(at(499_601, 500_800, 120)).toEqual([[120, 1]]);
    expect(at(499_600, 500_799, 120)).toEqual([[0, 1]]);
    expect(at(499_595, 500_805, 121)).toEqual([
      [0, 1],
      [120, 1],
    ]);
    expect(at(400_000, 600_000, 2)).toEqual([
      [0, 1],
      [1, 1],
    ]);
  });

  test('are those of the families tested, of what transmits', () => {
    const four = packsAt([500_000, 500_100, 500_300, 500_700]).map((pack, at) => ({
      ...pack,
      transmitting: at < 3,
    }));
    const axis = { fromKhz: 499_000, toKhz: 501_000, widthPx: 200 };
    const counted = (guards: Partial<Guards>) => {
      const columns = productColumns(analysed(four, guards), axis);
      return columns.reduce<Record<string, number>>((sum, { family, count }) => {
        sum[family] = (sum[family] ?? 0) + count;
        return sum;
      }, {});
    };
    // n(n-1), n(n-1)(n-2)/2 and n(n-1) of three carriers.
    expect(counted({ twoToneThirdKhz: 1 })).toEqual({ 'two-tone-third': 6 });
    expect(counted({ threeToneThirdKhz: 1 })).toEqual({ 'three-tone-third': 3 });
    expect(counted({ twoToneFifthKhz: 1 })).toEqual({ 'two-tone-fifth': 6 });
    expect(counted({})).toEqual({});
  });

  test('hit where a hit is held, and where none could be held where one is listed', () => {
    const three = packsAt([500_000, 500_400, 500_800]);
    const axis = { fromKhz: 499_000, toKhz: 502_000, widthPx: 300 };
    const hits = (options: Partial<AnalysisOptions>) =>
      productColumns(analysed(three, { twoToneThirdKhz: 50 }, options), axis)
        .filter((column) => column.hits)
        .map(({ xPx }) => xPx);
    expect(hits({})).toEqual([100, 180]);
    expect(hits({ mostHeld: 1 })).toHaveLength(1);
  });
});
