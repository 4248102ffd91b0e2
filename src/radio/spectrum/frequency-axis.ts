import type { Analysis } from '../intermodulation/analysis.ts';
import { formatMhz } from '../mhz-text.ts';

/** A range of spectrum mapped to a width in pixels. */
export interface FrequencyAxis {
  readonly fromKhz: number;
  readonly toKhz: number;
  readonly widthPx: number;
}

export interface Tick {
  readonly khz: number;
  readonly xPx: number;
  readonly label: string;
}

const LEAST_ROOM_KHZ = 500;
const TICK_APART_PX = 64;
const TICK_STEPS_KHZ = Array.from({ length: 9 }, (_, ten) =>
  [1, 2, 5].map((digit) => digit * 10 ** ten),
).flat();

const tenth = (px: number): number => Math.round(px * 10) / 10;

export const xOf = ({ fromKhz, toKhz, widthPx }: FrequencyAxis, khz: number): number =>
  tenth(((khz - fromKhz) / (toKhz - fromKhz)) * widthPx);

export const lengthOf = ({ fromKhz, toKhz, widthPx }: FrequencyAxis, khz: number): number =>
  tenth((khz / (toKhz - fromKhz)) * widthPx);

/** A range of spectrum to look at, ends included. */
export interface Stretch {
  readonly fromKhz: number;
  readonly toKhz: number;
}

const SPLIT_KHZ = 6_000;
const MOST_STRETCHES = 4;

/**
 * Where the carriers are: one range, or several if there are gaps of 6 MHz or more, so that each picture
 * shows its carriers apart. At most four, split at the widest gaps. Carriers at 470 to 475 and 530 to 533 MHz
 * → two ranges
 */
export function stretchesOf({ carriers }: Analysis): readonly Stretch[] {
  const khz = carriers.map((carrier) => carrier.khz).sort((a, b) => a - b);
  if (khz.length === 0) return [];
  const splits = khz
    .slice(1)
    .map((above, at) => ({ at: at + 1, gap: above - khz[at]! }))
    .filter(({ gap }) => gap >= SPLIT_KHZ)
    .sort((a, b) => b.gap - a.gap)
    .slice(0, MOST_STRETCHES - 1)
    .map(({ at }) => at)
    .sort((a, b) => a - b);
  const starts = [0, ...splits];
  return starts.map((start, at) => ({
    fromKhz: khz[start]!,
    toKhz: khz[(starts[at + 1] ?? khz.length) - 1]!,
  }));
}

export const isWithin = (stretch: Stretch | undefined, khz: number): boolean =>
  stretch === undefined || (khz >= stretch.fromKhz && khz <= stretch.toKhz);

/**
 * The axis that shows every carrier (of a range) with its widest guard and a little room; undefined without
 * carriers or width.
 */
export function axisFor(analysis: Analysis, widthPx: number, stretch?: Stretch): FrequencyAxis | undefined {
  const { guards } = analysis;
  const carriers = analysis.carriers.filter((carrier) => isWithin(stretch, carrier.khz));
  if (carriers.length === 0 || !Number.isFinite(widthPx) || widthPx < 1) return undefined;
  const khz = carriers.map((carrier) => carrier.khz);
  const low = Math.min(...khz);
  const high = Math.max(...khz);
  const guard = Math.max(...Object.values(guards), ...carriers.map(({ spacingKhz }) => spacingKhz ?? 0));
  const room = Math.max(LEAST_ROOM_KHZ, guard, Math.round((high - low) / 20));
  return { fromKhz: low - room, toKhz: high + room, widthPx };
}

/** Round frequencies at least 64 px apart. */
export function ticksOf(axis: FrequencyAxis): readonly Tick[] {
  const span = axis.toKhz - axis.fromKhz;
  const stepKhz =
    TICK_STEPS_KHZ.find((step) => lengthOf(axis, step) >= TICK_APART_PX) ?? 10 ** Math.ceil(Math.log10(span));
  const first = Math.ceil(axis.fromKhz / stepKhz) * stepKhz;
  return Array.from({ length: Math.max(0, Math.floor((axis.toKhz - first) / stepKhz) + 1) }, (_, at) => {
    const khz = first + at * stepKhz;
    return { khz, xPx: xOf(axis, khz), label: formatMhz(khz).replace(/\.?0+$/, '') };
  });
}
