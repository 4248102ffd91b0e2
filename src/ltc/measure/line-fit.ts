/** A straight line through points, by least squares, built up point by point. */
export interface LineFit {
  add(x: number, y: number): void;
  readonly count: () => number;
  /** The line so far; undefined below three points, which leave nothing to judge it by. */
  line(): Line | undefined;
}

export interface Line {
  readonly slope: number;
  /** The standard error of the slope. */
  readonly slopeError: number;
  /** How far points stray from the line: root mean square. */
  readonly spread: number;
  readonly count: number;
  at(x: number): number;
}

/** `add(0, 1)`, `add(1, 3)`, `add(2, 5)` has slope 2 and `at(3)` 7. */
export function lineFit(): LineFit {
  let [count, meanX, meanY, xx, xy, yy] = [0, 0, 0, 0, 0, 0];
  return {
    add(x, y) {
      // Sums about the means so far (Welford 1962), so that large positions lose no digits.
      count += 1;
      const [dx, dy] = [x - meanX, y - meanY];
      meanX += dx / count;
      meanY += dy / count;
      xx += dx * (x - meanX);
      xy += dx * (y - meanY);
      yy += dy * (y - meanY);
    },
    count: () => count,
    line() {
      if (count < 3) return undefined;
      const slope = xy / xx;
      const strayed = Math.max(0, yy - slope * xy);
      const [x0, y0] = [meanX, meanY];
      return {
        slope,
        slopeError: Math.sqrt(strayed / (count - 2) / xx),
        spread: Math.sqrt(strayed / (count - 2)),
        count,
        at: (x) => y0 + slope * (x - x0),
      };
    },
  };
}
