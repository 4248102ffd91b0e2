import type { TuningRange } from '../carrier.ts';

/** The most room that is measured; anything beyond counts as clear. */
export const MARGIN_CAP_KHZ = 1_000;

/** The room left at every raster position of one range, and what limits it (`limit`, -1 for nothing). */
export interface Margins {
  readonly khz: Int32Array;
  readonly margin: Int32Array;
  readonly limit: Int8Array;
}

export function marginsOf({ fromKhz, toKhz, rasterKhz }: TuningRange): Margins {
  const count = Math.floor((toKhz - fromKhz) / rasterKhz) + 1;
  return {
    khz: Int32Array.from({ length: count }, (_, step) => fromKhz + step * rasterKhz),
    margin: new Int32Array(count).fill(MARGIN_CAP_KHZ),
    limit: new Int8Array(count).fill(-1),
  };
}

export function tighten(margins: Margins, at: number, marginKhz: number, limit: number): void {
  if (marginKhz >= margins.margin[at]!) return;
  margins.margin[at] = marginKhz;
  margins.limit[at] = limit;
}

/** Which kHz around a range (times `scale`) must be avoided. */
export interface Marks {
  readonly cells: Uint8Array;
  readonly baseKhz: number;
  readonly scale: number;
}

/** Cells extend beyond the range by a guard plus the full margin, so nothing further away can matter. */
export function marksFor({ khz }: Margins, scale: number, guardKhz: number): Marks {
  const reach = guardKhz + MARGIN_CAP_KHZ;
  const baseKhz = khz[0]! * scale - reach;
  const topKhz = khz[khz.length - 1]! * scale + reach;
  return { cells: new Uint8Array(topKhz - baseKhz + 1), baseKhz, scale };
}

/** Marks one value; ignores values outside the cells. */
export function mark({ cells, baseKhz }: Marks, khz: number): void {
  const at = khz - baseKhz;
  if (at >= 0 && at < cells.length) cells[at] = 1;
}

/** Reduces every margin to the nearest mark: one pass up and one down, however many marks. */
export function tightenByMarks(margins: Margins, marks: Marks, guardKhz: number, limit: number): void {
  const { cells, baseKhz, scale } = marks;
  const { khz } = margins;
  let last = Number.NEGATIVE_INFINITY;
  let next = 0;
  for (let cell = 0; cell < cells.length && next < khz.length; cell += 1) {
    if (cells[cell] === 1) last = cell;
    if (cell === khz[next]! * scale - baseKhz) {
      tighten(margins, next, cell - last - guardKhz, limit);
      next += 1;
    }
  }
  last = Number.POSITIVE_INFINITY;
  next = khz.length - 1;
  for (let cell = cells.length - 1; cell >= 0 && next >= 0; cell -= 1) {
    if (cells[cell] === 1) last = cell;
    if (cell === khz[next]! * scale - baseKhz) {
      tighten(margins, next, last - cell - guardKhz, limit);
      next -= 1;
    }
  }
}
