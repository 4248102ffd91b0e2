/**
 * What the order of takes and files says of each pair, in bits, where no clock does: files are numbered and
 * takes are logged one after the other. The share of all ways to lay both side by side without crossing in
 * which the two come together, weighed by the other evidence (forward and backward sums, after Rabiner 1989),
 * against any file of the card. Files that are alike share it, so order alone never decides between them.
 */
export function orderBits(weights: readonly (readonly number[])[]): number[][] {
  const rows = weights.length;
  const columns = weights[0]?.length ?? 0;
  if (rows === 0 || columns === 0) return weights.map(() => []);
  const odds = weights.map((row) => row.map((weight) => 2 ** Math.max(-MOST, Math.min(MOST, weight))));
  const forward = sums(odds, rows, columns);
  const turned = odds.toReversed().map((row) => row.toReversed());
  const backward = sums(turned, rows, columns);
  const all = forward.log(rows, columns);
  return odds.map((row, at) =>
    row.map((one, other) => {
      const through =
        forward.log(at, other) + Math.log2(one) + backward.log(rows - at - 1, columns - other - 1) - all;
      return Math.max(LEAST_ORDER, Math.min(MOST_ORDER, through + Math.log2(Math.max(rows, columns))));
    }),
  );
}

/** A weight beyond this decides by itself. */
const MOST = 20;
/** An order is broken once in thirty: a take logged late, a file renamed (common practice, no source). */
const LEAST_ORDER = -5;
const MOST_ORDER = 5;

interface Sums {
  /** log2 of the summed odds of all ways through the first rows and columns. */
  readonly log: (rows: number, columns: number) => number;
}

/** Every row is scaled by itself, or long cards would overflow. */
function sums(odds: readonly (readonly number[])[], rows: number, columns: number): Sums {
  const table: Float64Array[] = [new Float64Array(columns + 1).fill(1)];
  const scale = [0];
  for (let row = 1; row <= rows; row += 1) {
    const above = table[row - 1]!;
    const next = new Float64Array(columns + 1);
    next[0] = above[0]!;
    for (let column = 1; column <= columns; column += 1) {
      // Each way is counted once: skipping a column and a row are taken in one order.
      const skipped = above[column]! + next[column - 1]! - above[column - 1]!;
      next[column] = skipped + above[column - 1]! * odds[row - 1]![column - 1]!;
    }
    const most = Math.max(1e-300, ...next);
    for (let column = 0; column <= columns; column += 1) next[column]! /= most;
    table.push(next);
    scale.push(scale[row - 1]! + Math.log2(most));
  }
  return {
    log: (row, column) => Math.log2(Math.max(1e-300, table[row]![column]!)) + scale[row]!,
  };
}
