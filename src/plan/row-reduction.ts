import { type Matching, reduceColumns } from './column-reduction.ts';

/** How often, for each row, a row may bid before the search for paths takes over. */
const PATIENCE = 2;
/** How often those who were outbid at no gain may try again. */
const ROUNDS = 2;

let waiting = new Int32Array(0);

/**
 * A start that leaves few rows over: every row bids for its cheapest column up to what the second one would cost it,
 * and whoever is outbid bids again ("augmenting row reduction": Jonker and Volgenant, Computing 38 (1987) 325-340).
 */
export function reduceRows(matching: Matching, cost: Float64Array, rows: number, columns: number): void {
  if (waiting.length < rows) waiting = new Int32Array(rows);
  if (rows === columns) reduceColumns(matching, cost, rows);
  let bids = rows * PATIENCE;
  for (let round = 0; round < ROUNDS && bids > 0; round += 1) {
    bids = bidAll(matching, cost, rows, columns, bids);
  }
}

/** Returns how many bids are left over. */
function bidAll(
  { columnOf, rowOf, columnPrice }: Matching,
  cost: Float64Array,
  rows: number,
  columns: number,
  most: number,
): number {
  let left = 0;
  for (let row = rows - 1; row >= 0; row -= 1) if (columnOf[row]! < 0) waiting[left++] = row;
  let bids = most;
  for (; left > 0 && bids > 0; bids -= 1) {
    const row = waiting[--left]!;
    const base = row * columns;
    let first = -1;
    let least = Infinity;
    let next = Infinity;
    for (let column = 0; column < columns; column += 1) {
      const price = cost[base + column]! - columnPrice[column]!;
      if (price >= next) continue;
      if (price < least) {
        next = least;
        least = price;
        first = column;
      } else next = price;
    }
    // With one column or none there is nothing to compare; the search for paths sees to it.
    if (next === Infinity) continue;
    let column = first;
    if (least < next) columnPrice[first]! -= next - least;
    else if (rowOf[first]! >= 0) {
      do column += 1;
      while (
        column < columns &&
        (rowOf[column]! >= 0 || cost[base + column]! - columnPrice[column]! > least)
      );
      // Who could only outbid somebody at no gain waits for the search: bidding on would go round in a circle.
      if (column === columns) continue;
    }
    const outbid = rowOf[column]!;
    rowOf[column] = row;
    columnOf[row] = column;
    if (outbid < 0) continue;
    columnOf[outbid] = -1;
    waiting[left++] = outbid;
  }
  return bids;
}
