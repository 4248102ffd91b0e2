import type { Start } from './augmenting-paths.ts';

/** How often, for each row, a row may be put out of its column again before the search for paths takes over. */
const PATIENCE = 2;

/**
 * A start that leaves few rows over: every row bids for its cheapest column up to what the second one would cost it,
 * and whoever is outbid bids again ("augmenting row reduction": Jonker and Volgenant, Computing 38 (1987) 325-340).
 */
export const reduceRows: Start = ({ columnOf, rowOf, rowPrice, columnPrice }, cost, rows, columns) => {
  const waiting = new Int32Array(rows);
  let left = 0;
  for (let row = rows - 1; row >= 0; row -= 1) waiting[left++] = row;
  for (let bids = rows * PATIENCE; left > 0 && bids > 0; bids -= 1) {
    const row = waiting[--left]!;
    let first = -1;
    let second = -1;
    let least = Infinity;
    let next = Infinity;
    for (let column = 0, at = row * columns; column < columns; column += 1, at += 1) {
      const price = cost[at]! - columnPrice[column]!;
      if (price >= next) continue;
      if (price < least) {
        second = first;
        next = least;
        first = column;
        least = price;
      } else {
        second = column;
        next = price;
      }
    }
    // With one column or none there is nothing to compare; the search for paths sees to it.
    if (second < 0) {
      rowPrice[row] = first < 0 ? 0 : least;
      continue;
    }
    rowPrice[row] = next;
    let column = first;
    if (least < next) columnPrice[first]! -= next - least;
    else if (rowOf[first]! >= 0) column = second;
    const outbid = rowOf[column]!;
    rowOf[column] = row;
    columnOf[row] = column;
    if (outbid < 0) continue;
    columnOf[outbid] = -1;
    // Who was outbid at no gain waits for the search: bidding on would go round in a circle.
    if (least < next) waiting[left++] = outbid;
  }
  // Rows that never came to bid have a price as well.
  while (left > 0) {
    const row = waiting[--left]!;
    let least = Infinity;
    for (let column = 0, at = row * columns; column < columns; column += 1, at += 1)
      least = Math.min(least, cost[at]! - columnPrice[column]!);
    rowPrice[row] = least === Infinity ? 0 : least;
  }
};
