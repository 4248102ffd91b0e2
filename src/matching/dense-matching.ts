import { flipPath } from './augmenting-paths.ts';
import { type Matching, reduceRows } from './reduction.ts';

/** Results of one run; the arrays are reused by the next. */
export interface DenseMatching extends Matching {
  /** Gives every row its own column at least cost; false if impossible. */
  run(cost: Float64Array, rows: number, columns: number): boolean;
}

/**
 * A solver for dense minimum-cost assignment with rows <= columns, up to the given sizes. Costs are
 * row-major; Infinity forbids a pair. Rows bid first, and shortest augmenting paths with prices place the
 * rest (Jonker and Volgenant, Computing 38 (1987) 325-340), O(rows^2 * columns), exact as long as sums of
 * costs stay below 2^53. Faster than `augmentingPaths`, but picks other optima: the plan search depends on
 * which it gets, and proves fewer plans in its time with these.
 */
export function denseMatching(maxRows: number, maxColumns: number): DenseMatching {
  const columnOf = new Int32Array(maxRows);
  const rowOf = new Int32Array(maxColumns);
  const columnPrice = new Float64Array(maxColumns);
  const distance = new Float64Array(maxColumns);
  const cameFrom = new Int32Array(maxColumns);
  const path = { columnOf, rowOf, cameFrom };
  /** Columns whose distance is final, nearest first. */
  const queue = new Int32Array(maxColumns);

  const startAt = (cost: Float64Array, row: number, columns: number): void => {
    cameFrom.fill(row, 0, columns);
    for (let column = 0, at = row * columns; column < columns; column += 1, at += 1)
      distance[column] = cost[at]! - columnPrice[column]!;
  };

  /** Queues, from index `low` on, the nearest of the columns beyond `reached`; returns where they end. */
  const queueNearest = (low: number, reached: number, columns: number): number => {
    let nearest = Infinity;
    let up = low;
    for (let column = 0; column < columns; column += 1) {
      const known = distance[column]!;
      if (known > nearest || known <= reached) continue;
      if (known < nearest) {
        nearest = known;
        up = low;
      }
      queue[up++] = column;
    }
    return nearest === Infinity ? low : up;
  };

  const freeAmong = (low: number, up: number): number => {
    for (let at = low; at < up; at += 1) if (rowOf[queue[at]!]! < 0) return queue[at]!;
    return -1;
  };

  /**
   * The first `passed` columns are nearer than the end; their prices move so that the path is the cheapest of
   * its rows.
   */
  const movePrices = (reached: number, passed: number): void => {
    for (let at = 0; at < passed; at += 1) {
      const column = queue[at]!;
      columnPrice[column]! -= reached - distance[column]!;
    }
  };

  const augment = (cost: Float64Array, start: number, columns: number): boolean => {
    startAt(cost, start, columns);
    let reached = -Infinity;
    let passed = 0;
    let end = -1;
    for (let low = 0, up = 0; end < 0; ) {
      if (low === up) {
        passed = up;
        up = queueNearest(low, reached, columns);
        if (up === low) return false;
        reached = distance[queue[low]!]!;
        end = freeAmong(low, up);
        if (end >= 0) break;
      }
      // Two rows at a time, to read a column's price and distance once for both; a last odd one is done
      // twice.
      const one = queue[low++]!;
      const two = low < up ? queue[low++]! : one;
      const oneRow = rowOf[one]! * columns;
      const twoRow = rowOf[two]! * columns;
      const oneOffset = cost[oneRow + one]! - columnPrice[one]! - reached;
      const twoOffset = cost[twoRow + two]! - columnPrice[two]! - reached;
      for (let column = 0; column < columns; column += 1) {
        const price = columnPrice[column]!;
        const known = distance[column]!;
        const throughOne = cost[oneRow + column]! - price - oneOffset;
        const throughTwo = cost[twoRow + column]! - price - twoOffset;
        if ((throughOne >= known && throughTwo >= known) || known <= reached) continue;
        const isOne = throughOne <= throughTwo;
        const length = isOne ? throughOne : throughTwo;
        distance[column] = length;
        cameFrom[column] = rowOf[isOne ? one : two]!;
        if (length > reached) continue;
        if (rowOf[column]! < 0) {
          end = column;
          break;
        }
        queue[up++] = column;
      }
    }
    movePrices(reached, passed);
    flipPath(path, start, end);
    return true;
  };

  const matching = { columnOf, rowOf, columnPrice };
  const run = (cost: Float64Array, rows: number, columns: number): boolean => {
    columnOf.fill(-1, 0, rows);
    rowOf.fill(-1, 0, columns);
    columnPrice.fill(0, 0, columns);
    reduceRows(matching, cost, rows, columns);
    for (let row = 0; row < rows; row += 1) {
      if (columnOf[row]! < 0 && !augment(cost, row, columns)) return false;
    }
    return true;
  };

  return { ...matching, run };
}
