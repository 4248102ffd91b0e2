import type { CleanPosition } from './clean-positions.ts';

/**
 * The best positions that are not next door to a better one: best first, at least `apartKhz` from each other, at most so many.
 * A hole in the spectrum has dozens of good raster positions, and one of them says it all.
 */
export function spreadOut(
  positions: readonly CleanPosition[],
  apartKhz: number,
  most: number,
): CleanPosition[] {
  const chosen: CleanPosition[] = [];
  for (const position of positions) {
    if (chosen.length >= most) break;
    if (chosen.every(({ khz }) => Math.abs(khz - position.khz) >= apartKhz)) chosen.push(position);
  }
  return chosen;
}
