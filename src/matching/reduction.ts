/** How often a row may bid, per row, before the path search takes over. */
const PATIENCE = 2;
/** How often rows outbid at no gain may try again. */
const ROUNDS = 2;

let waiting = new Int32Array(0);

/**
 * A start that leaves few rows: every row bids for its cheapest column up to the cost of its second choice,
 * and whoever is outbid bids again ("augmenting row reduction": Jonker and Volgenant, Computing 38 (1987)
 * 325-340).
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
    // With at most one column there is nothing to compare; the path search handles it.
    if (next === Infinity) continue;
    let column = first;
    if (least < next) columnPrice[first]! -= next - least;
    else if (rowOf[first]! >= 0) {
      do column += 1;
      while (
        column < columns &&
        (rowOf[column]! >= 0 || cost[base + column]! - columnPrice[column]! > least)
      );
      // Rows that could only outbid at no gain wait for the search: bidding on would loop.
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

export interface Matching {
  /** Column of each row. */
  readonly columnOf: Int32Array;
  /** Row of each column, -1 if the column is free. */
  readonly rowOf: Int32Array;
  /** With more columns than rows: never above zero, and zero on a free column. */
  readonly columnPrice: Float64Array;
}

let cheapestRowOf = new Int32Array(0);
let wonBy = new Int32Array(0);

/**
 * Prices every column of a square matrix at its least cost and gives it to that row, if the row has none yet
 * ("column reduction" and "reduction transfer": Jonker and Volgenant, Computing 38 (1987) 325-340). Not valid
 * with fewer rows than columns: a column that stays free must have no price.
 */
export function reduceColumns(matching: Matching, cost: Float64Array, size: number): void {
  const { columnOf, rowOf, columnPrice } = matching;
  if (wonBy.length < size) {
    cheapestRowOf = new Int32Array(size);
    wonBy = new Int32Array(size);
  }
  wonBy.fill(0, 0, size);
  findColumnMinima(columnPrice, cheapestRowOf, cost, size);
  for (let column = size - 1; column >= 0; column -= 1) {
    const row = cheapestRowOf[column]!;
    // No row may have this column, so nothing can be assigned, as the path search will find.
    if (columnPrice[column] === Infinity) columnPrice[column] = 0;
    else if (wonBy[row]!++ === 0) {
      rowOf[column] = row;
      columnOf[row] = column;
    }
  }
  for (let row = 0; row < size; row += 1) {
    if (wonBy[row] === 1) transfer(columnPrice, cost, size, row, columnOf[row]!);
  }
}

function findColumnMinima(
  columnPrice: Float64Array,
  cheapestRowOf: Int32Array,
  cost: Float64Array,
  size: number,
): void {
  columnPrice.fill(Infinity, 0, size);
  const last = size - 1;
  // Four rows at a time, which takes half as long; the last row may repeat.
  for (let row = 0; row < size; row += 4) {
    const [second, third, fourth] = [
      Math.min(row + 1, last),
      Math.min(row + 2, last),
      Math.min(row + 3, last),
    ];
    for (let column = 0; column < size; column += 1) {
      const a = cost[row * size + column]!;
      const b = cost[second * size + column]!;
      const c = cost[third * size + column]!;
      const d = cost[fourth * size + column]!;
      let least = columnPrice[column]!;
      if (a >= least && b >= least && c >= least && d >= least) continue;
      let cheapest = row;
      least = a;
      if (b < least) {
        least = b;
        cheapest = second;
      }
      if (c < least) {
        least = c;
        cheapest = third;
      }
      if (d < least) {
        least = d;
        cheapest = fourth;
      }
      columnPrice[column] = least;
      cheapestRowOf[column] = cheapest;
    }
  }
}

/** A row with only one column leaves it as cheap for others as its own next best is for itself. */
function transfer(
  columnPrice: Float64Array,
  cost: Float64Array,
  size: number,
  row: number,
  won: number,
): void {
  const price = columnPrice[won]!;
  columnPrice[won] = -Infinity;
  let least = Infinity;
  for (let column = 0, at = row * size; column < size; column += 1, at += 1) {
    const slack = cost[at]! - columnPrice[column]!;
    if (slack < least) least = slack;
  }
  const own = cost[row * size + won]! - price;
  columnPrice[won] = least === Infinity ? price : price - (least - own);
}
