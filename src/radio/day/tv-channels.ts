import { fail, ok, type Result } from '../../shared/result.ts';
import type { OccupiedBlock } from '../carrier.ts';

export type TvRaster = 'us' | 'uhf-8-mhz';

export type TvProblem = {
  readonly code: 'tv-channel-unknown';
  readonly raster: TvRaster;
  readonly channel: number;
};

interface Run {
  readonly first: number;
  readonly last: number;
  readonly fromKhz: number;
  readonly widthKhz: number;
}

/**
 * US: 47 CFR 73.603(a), channels 2 to 36 and 37, which carries no TV (73.603(c)).
 * 8 MHz: the UHF raster of ITU Region 1, lower edge 470 + 8 (n - 21) MHz, channels 21 to 69 as first planned.
 */
const RUNS: Record<TvRaster, readonly Run[]> = {
  us: [
    { first: 2, last: 4, fromKhz: 54_000, widthKhz: 6_000 },
    { first: 5, last: 6, fromKhz: 76_000, widthKhz: 6_000 },
    { first: 7, last: 13, fromKhz: 174_000, widthKhz: 6_000 },
    { first: 14, last: 37, fromKhz: 470_000, widthKhz: 6_000 },
  ],
  'uhf-8-mhz': [{ first: 21, last: 69, fromKhz: 470_000, widthKhz: 8_000 }],
};

const topKhz = ({ first, last, fromKhz, widthKhz }: Run): number => fromKhz + (last - first + 1) * widthKhz;

/** The spectrum of a TV channel. `tvChannel('us', 24)` → ok { name: 'TV 24', fromKhz: 530000, … } */
export function tvChannel(raster: TvRaster, channel: number): Result<OccupiedBlock, TvProblem> {
  const run = RUNS[raster].find(({ first, last }) => channel >= first && channel <= last);
  if (!run || !Number.isInteger(channel))
    return fail({ code: 'tv-channel-unknown', raster, channel: Number.isFinite(channel) ? channel : 0 });
  const fromKhz = run.fromKhz + (channel - run.first) * run.widthKhz;
  return ok({ name: `TV ${channel}`, fromKhz, toKhz: fromKhz + run.widthKhz });
}

/**
 * The TV channel a frequency is in, or undefined between and beyond the channels. A shared edge belongs to
 * the upper channel. `tvChannelAt('us', 533_125)` → 24; `tvChannelAt('uhf-8-mhz', 533_125)` → 28
 */
export function tvChannelAt(raster: TvRaster, khz: number): number | undefined {
  const run = RUNS[raster].find((candidate) => khz >= candidate.fromKhz && khz < topKhz(candidate));
  return run && run.first + Math.floor((khz - run.fromKhz) / run.widthKhz);
}

/** Every channel of a raster that overlaps a range, lowest first; touching edges do not overlap. */
export function tvChannelsIn(raster: TvRaster, fromKhz: number, toKhz: number): readonly number[] {
  return RUNS[raster].flatMap((run) =>
    Array.from({ length: run.last - run.first + 1 }, (_, step) => run.first + step).filter((channel) => {
      const lower = run.fromKhz + (channel - run.first) * run.widthKhz;
      return lower < toKhz && lower + run.widthKhz > fromKhz;
    }),
  );
}
