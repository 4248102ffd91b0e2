export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A line through points, some of which may be wrong. */
export interface RobustLine {
  readonly slope: number;
  /** About one standard error of the slope. */
  readonly slopeError: number;
  /** The line passes through here. */
  readonly middle: Point;
  /** Median distance of the points from the line, in y. */
  readonly spread: number;
}

/** More points than this are thinned out evenly, because the number of pairs grows with the square. */
const MOST_POINTS = 400;

/**
 * The line of Theil (1950) and Sen (1968): its slope is the median slope of all pairs of points, so up to 29
 * % of them may be anywhere. Undefined for fewer than two different x. Points (0, 1), (1, 3), (2, 5), (3, 99)
 * give slope 2.
 */
export function robustLine(points: readonly Point[]): RobustLine | undefined {
  const used = thinned(points);
  const slopes = pairSlopes(used);
  if (slopes.length === 0) return undefined;
  const slope = medianOf(slopes);
  const x = medianOf(used.map((point) => point.x));
  const y = medianOf(used.map((point) => point.y - slope * (point.x - x)));
  const spread = medianOf(used.map((point) => Math.abs(point.y - y - slope * (point.x - x))));
  return { slope, slopeError: slopeErrorOf(used, spread), middle: { x, y }, spread };
}

export const lineAt = ({ slope, middle }: RobustLine, x: number): number => middle.y + slope * (x - middle.x);

/** The median, the mean of the middle two for an even count; 0 if empty. */
export function medianOf(values: readonly number[] | Float64Array): number {
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  if (sorted.length === 0) return 0;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

const thinned = (points: readonly Point[]): readonly Point[] =>
  points.length <= MOST_POINTS
    ? points
    : Array.from({ length: MOST_POINTS }, (_, at) => points[Math.floor((at * points.length) / MOST_POINTS)]!);

function pairSlopes(points: readonly Point[]): Float64Array {
  const slopes = new Float64Array((points.length * (points.length - 1)) / 2);
  let count = 0;
  for (const [at, one] of points.entries()) {
    for (let other = at + 1; other < points.length; other += 1) {
      const run = points[other]!.x - one.x;
      if (run === 0) continue;
      slopes[count] = (points[other]!.y - one.y) / run;
      count += 1;
    }
  }
  return slopes.subarray(0, count);
}

/** As for least squares, with the spread taken from the median, which is 0.6745 standard deviations. */
function slopeErrorOf(points: readonly Point[], spread: number): number {
  const mean = points.reduce((sum, { x }) => sum + x, 0) / points.length;
  const moment = Math.sqrt(points.reduce((sum, { x }) => sum + (x - mean) ** 2, 0));
  return moment === 0 ? 0 : (1.25 * (spread / 0.6745)) / moment;
}
