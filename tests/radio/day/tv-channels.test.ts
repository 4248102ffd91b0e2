import { describe, expect, test } from 'vitest';
import { type TvRaster, tvChannel, tvChannelAt, tvChannelsIn } from '../../../src/radio/day/tv-channels.ts';

const mhz = (raster: TvRaster, channel: number): string => {
  const found = tvChannel(raster, channel);
  return found.ok ? `${found.value.fromKhz / 1000}-${found.value.toKhz / 1000}` : found.problem.code;
};

describe('US TV channels (47 CFR 73.603(a))', () => {
  test.each([
    [2, '54-60'],
    [4, '66-72'],
    [5, '76-82'],
    [6, '82-88'],
    [7, '174-180'],
    [13, '210-216'],
    [14, '470-476'],
    [20, '506-512'],
    [21, '512-518'],
    [36, '602-608'],
    [37, '608-614'],
  ])('channel %i is %s MHz', (channel, edges) => {
    expect(mhz('us', channel)).toBe(edges);
  });

  test('533.125 MHz lies in channel 24 (by arithmetic)', () => {
    expect(tvChannelAt('us', 533_125)).toBe(24);
  });

  test('between the runs there is no channel: 72 to 76, 88 to 174, 216 to 470 and above 614 MHz', () => {
    expect(
      [53_999, 72_000, 75_999, 88_000, 173_999, 216_000, 469_999, 614_000].map((khz) =>
        tvChannelAt('us', khz),
      ),
    ).toEqual(Array(8).fill(undefined));
  });

  test('a stretch is shared with the channels it overlaps, not with those it touches', () => {
    expect(tvChannelsIn('us', 470_000, 482_000)).toEqual([14, 15]);
    expect(tvChannelsIn('us', 475_999, 476_001)).toEqual([14, 15]);
    expect(tvChannelsIn('us', 70_000, 80_000)).toEqual([4, 5]);
    expect(tvChannelsIn('us', 89_000, 170_000)).toEqual([]);
  });
});

describe('8 MHz UHF channels (470 + 8 (n - 21) MHz, centre 306 + 8 n; two public tables)', () => {
  test.each([
    [21, '470-478', 474],
    [38, '606-614', 610],
    [48, '686-694', 690],
    [60, '782-790', 786],
  ])('channel %i is %s MHz around %i', (channel, edges, centre) => {
    expect(mhz('uhf-8-mhz', channel)).toBe(edges);
    expect(306 + 8 * channel).toBe(centre);
    expect(tvChannelAt('uhf-8-mhz', centre * 1000)).toBe(channel);
  });

  test('533.125 MHz lies in channel 28 (by arithmetic)', () => {
    expect(tvChannelAt('uhf-8-mhz', 533_125)).toBe(28);
  });
});

describe.each<[TvRaster, number, number]>([
  ['us', 2, 37],
  ['uhf-8-mhz', 21, 69],
])('the %s formulas', (raster, first, last) => {
  test('lead back from both inner edges of every channel', () => {
    for (let channel = first; channel <= last; channel += 1) {
      const found = tvChannel(raster, channel);
      if (!found.ok) throw new Error(found.problem.code);
      const { fromKhz, toKhz } = found.value;
      expect([tvChannelAt(raster, fromKhz), tvChannelAt(raster, toKhz - 1)]).toEqual([channel, channel]);
    }
  });

  test.each([first - 1, last + 1, 0, -3, 21.5, Number.NaN, Number.POSITIVE_INFINITY])(
    'know no channel %d',
    (channel) => {
      const found = tvChannel(raster, channel);
      expect(found).toEqual({
        ok: false,
        problem: { code: 'tv-channel-unknown', raster, channel: Number.isFinite(channel) ? channel : 0 },
      });
    },
  );
});
