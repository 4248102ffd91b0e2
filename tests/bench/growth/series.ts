/** How one work's cost follows one size: medians in milliseconds (or megabytes) at sizes that double or so. */
export interface Series {
  readonly work: string;
  readonly unit: 'ms' | 'MB';
  readonly points: readonly { readonly size: number; readonly cost: number }[];
}

/** The works that were measured against one size. */
export interface Growth {
  /** What grows: `'takes'`. */
  readonly of: string;
  /** What was held still: `'16 tracks, 12 performers, seed 9'`. */
  readonly with: string;
  readonly series: readonly Series[];
}

/**
 * The exponent of the cost over the last three sizes (least squares in logarithms): 0 does not grow, 1 grows as the size
 * does, 2 as its square. It is read at the large end, where what is paid once no longer hides it.
 */
export function exponentOf({ points }: Series): number {
  const last = points.slice(-3).map(({ size, cost }) => ({ x: Math.log(size), y: Math.log(cost) }));
  const mean = (of: 'x' | 'y'): number => last.reduce((sum, point) => sum + point[of], 0) / last.length;
  const [x, y] = [mean('x'), mean('y')];
  const along = last.reduce((sum, point) => sum + (point.x - x) * (point.y - y), 0);
  const across = last.reduce((sum, point) => sum + (point.x - x) ** 2, 0);
  return along / across;
}

/** Every size that something was measured at, the least first. */
export const sizesOf = (series: readonly Series[]): number[] =>
  [...new Set(series.flatMap(({ points }) => points.map(({ size }) => size)))].sort((a, b) => a - b);

/** Two digits are all that such a measure is worth: `'0.12'`, `'7.1'`, `'140'`. */
export const figure = (value: number): string =>
  value >= 10
    ? Number(value.toPrecision(2)).toLocaleString('en-GB')
    : value >= 1
      ? value.toFixed(1)
      : value.toFixed(2);
