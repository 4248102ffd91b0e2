/** Results of one run; the arrays are reused by the next. */
export interface AugmentingPaths {
  /** Gives every row its own column at least cost; false if impossible. */
  run(cost: Float64Array, rows: number, columns: number): boolean;
  /** Column of each row. */
  readonly columnOf: Int32Array;
  /** Row of each column, -1 if the column is free. */
  readonly rowOf: Int32Array;
  readonly rowPrice: Float64Array;
  /** Never above zero; zero on a free column. */
  readonly columnPrice: Float64Array;
}

/**
 * A solver for dense minimum-cost assignment with rows <= columns, up to the given sizes. Costs are
 * row-major; Infinity forbids a pair. Shortest augmenting paths with prices (Jonker and Volgenant, Computing
 * 38 (1987) 325-340), O(rows^2 * columns), exact as long as sums of costs stay below 2^53.
 */
export function augmentingPaths(maxRows: number, maxColumns: number): AugmentingPaths {
  const columnOf = new Int32Array(maxRows);
  const rowOf = new Int32Array(maxColumns);
  const rowPrice = new Float64Array(maxRows);
  const columnPrice = new Float64Array(maxColumns);
  const distance = new Float64Array(maxColumns);
  const cameFrom = new Int32Array(maxColumns);
  const path = { columnOf, rowOf, cameFrom };
  const todo = new Int32Array(maxColumns);

  /** The nearest remaining column, preferring free ones. Returns its index in `todo`, or -1. */
  const relax = (cost: Float64Array, row: number, reached: number, columns: number, left: number): number => {
    const base = row * columns;
    const offset = reached - rowPrice[row]!;
    let place = -1;
    let nearest = Infinity;
    let nearestIsFree = false;
    for (let at = 0; at < left; at += 1) {
      const column = todo[at]!;
      const through = offset + cost[base + column]! - columnPrice[column]!;
      if (through < distance[column]!) {
        distance[column] = through;
        cameFrom[column] = row;
      }
      const known = distance[column]!;
      if (known > nearest || known === Infinity) continue;
      const free = rowOf[column]! < 0;
      if (known === nearest && (nearestIsFree || !free)) continue;
      nearest = known;
      nearestIsFree = free;
      place = at;
    }
    return place;
  };

  /** Columns final before the last one are behind `left` in `todo`; prices move so that the path is tight. */
  const movePrices = (start: number, reached: number, left: number, columns: number): void => {
    rowPrice[start]! += reached;
    for (let at = left + 1; at < columns; at += 1) {
      const column = todo[at]!;
      const slack = reached - distance[column]!;
      columnPrice[column]! -= slack;
      rowPrice[rowOf[column]!]! += slack;
    }
  };

  const augment = (cost: Float64Array, start: number, columns: number): boolean => {
    for (let column = 0; column < columns; column += 1) {
      distance[column] = Infinity;
      todo[column] = column;
    }
    let row = start;
    let reached = 0;
    for (let left = columns; left > 0; ) {
      const place = relax(cost, row, reached, columns, left);
      if (place < 0) return false;
      const column = todo[place]!;
      left -= 1;
      todo[place] = todo[left]!;
      todo[left] = column;
      reached = distance[column]!;
      row = rowOf[column]!;
      if (row >= 0) continue;
      movePrices(start, reached, left, columns);
      flipPath(path, start, column);
      return true;
    }
    return false;
  };

  /** Rows whose cheapest column is still free take it: no price has moved yet. */
  const takeRowMinima = (cost: Float64Array, rows: number, columns: number): void => {
    for (let row = 0; row < rows; row += 1) {
      let best = -1;
      let least = Infinity;
      for (let column = 0, at = row * columns; column < columns; column += 1, at += 1) {
        if (cost[at]! < least) {
          least = cost[at]!;
          best = column;
        }
      }
      rowPrice[row] = best < 0 ? 0 : least;
      if (best >= 0 && rowOf[best]! < 0) {
        rowOf[best] = row;
        columnOf[row] = best;
      }
    }
  };

  const run = (cost: Float64Array, rows: number, columns: number): boolean => {
    columnOf.fill(-1, 0, rows);
    rowOf.fill(-1, 0, columns);
    columnPrice.fill(0, 0, columns);
    takeRowMinima(cost, rows, columns);
    for (let row = 0; row < rows; row += 1) {
      if (columnOf[row]! < 0 && !augment(cost, row, columns)) return false;
    }
    return true;
  };

  return { columnOf, rowOf, rowPrice, columnPrice, run };
}

/** A path: for each column on it, the row it was reached from, and which row had it before. */
interface Path {
  readonly columnOf: Int32Array;
  readonly rowOf: Int32Array;
  readonly cameFrom: Int32Array;
}

/** Every row on the path to column `end` moves to its next column; row `start` had none. */
export function flipPath({ columnOf, rowOf, cameFrom }: Path, start: number, end: number): void {
  let column = end;
  for (;;) {
    const row = cameFrom[column]!;
    const before = columnOf[row]!;
    rowOf[column] = row;
    columnOf[row] = column;
    if (row === start) return;
    column = before;
  }
}
