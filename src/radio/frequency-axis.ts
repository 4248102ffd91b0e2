import type { Analysis } from './analysis.ts';
import { formatMhz } from './parse-mhz.ts';

/** A stretch of spectrum laid on a width in pixels. */
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

/** A length on the axis. */
export const lengthOf = ({ fromKhz, toKhz, widthPx }: FrequencyAxis, khz: number): number =>
  tenth((khz / (toKhz - fromKhz)) * widthPx);

/** The axis that shows every carrier with its widest guard and a little room; undefined where there is no carrier or no width. */
export function axisFor({ carriers, guards }: Analysis, widthPx: number): FrequencyAxis | undefined {
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
