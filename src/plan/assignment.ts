import { fail, ok, type Result } from '../shared/result.ts';
import { type AugmentingPaths, augmentingPaths } from './augmenting-paths.ts';
import { reduceRows } from './row-reduction.ts';

/** A pair that may never be made. */
export const FORBIDDEN = Infinity;

export interface AssignmentInput {
  readonly rows: number;
  readonly columns: number;
  /** Row-major whole numbers, `rows * columns` of them, or one array a row; FORBIDDEN where a pair may not be. */
  readonly costs: Float64Array | readonly (readonly number[])[];
  /** The column each row has now, -1 or absent for none; kept where that costs nothing. */
  readonly current?: readonly number[];
}

export interface Assignment {
  /** Column of each row, -1 where the row stays without one. */
  readonly columnOf: readonly number[];
  /** Sum of the costs of the pairs made. */
  readonly cost: number;
  /** How many rows have a column. */
  readonly matched: number;
}

export type AssignmentProblem =
  | { readonly code: 'cost-not-whole'; readonly row: number; readonly column: number }
  | { readonly code: 'costs-of-wrong-size'; readonly rows: number; readonly columns: number }
  | { readonly code: 'costs-too-large'; readonly total: number };

/**
 * The exact minimum-cost assignment of rows to columns, of any two counts: as many rows as can be, then at the
 * least cost; among equal ones as many current pairs as can be, then the lowest column for the first row, the
 * second, and so on. So it never depends on how it was computed, and its own answer given as `current` stays.
 * `assign({ rows: 2, columns: 2, costs: [[1, 2], [2, 100]] })` gives columns 1, 0 and cost 4.
 */
export function assign(input: AssignmentInput): Result<Assignment, AssignmentProblem> {
  const { rows, columns } = input;
  const known = readCosts(input);
  if (!known) return fail({ code: 'costs-of-wrong-size', rows, columns });
  const { flat: costs, odd, least, most } = known;
  if (odd >= 0) {
    return fail({ code: 'cost-not-whole', row: Math.floor(odd / columns), column: odd % columns });
  }
  const unit = rows + 1;
  const without = ((most - least) * rows + 1) * unit + most * unit;
  const largestTotal = (without - least * unit + 1) * (rows + 1);
  if (!(largestTotal < Number.MAX_SAFE_INTEGER))
    return fail({ code: 'costs-too-large', total: largestTotal });
  const scaled = input.current ? favouring(input.current, costs, columns, unit) : costs;
  const solved =
    (rows <= columns && solve(scaled, rows, columns)) ||
    solve(withExits(scaled, rows, columns, without), rows, columns + rows);
  return ok(read(solved as AugmentingPaths, costs, rows, columns));
}

/** The optimum with its ties settled; undefined where some row must stay without a column. */
function solve(costs: Float64Array, rows: number, width: number): AugmentingPaths | undefined {
  const solver = solverFor(rows, width);
  if (!solver.run(costs, rows, width, reduceRows)) return undefined;
  settleTies(solver, costs, rows, width);
  return solver;
}

let kept = { rows: 0, width: 0, solver: augmentingPaths(0, 0) };

/** Making room takes longer than a small assignment does, so the room of the last one is used again. */
function solverFor(rows: number, width: number): AugmentingPaths {
  const fits = rows <= kept.rows && width <= kept.width;
  if (!fits) kept = { rows, width, solver: augmentingPaths(rows, width) };
  return kept.solver;
}

interface ReadCosts {
  readonly flat: Float64Array;
  /** Where the first cost stands that is no whole number, or -1. */
  readonly odd: number;
  /** Not above 0. */
  readonly least: number;
  /** Not below 0. */
  readonly most: number;
}

function readCosts({ costs, rows, columns }: AssignmentInput): ReadCosts | undefined {
  const isFlat = costs instanceof Float64Array;
  if (isFlat ? costs.length !== rows * columns : costs.length !== rows) return undefined;
  const flat = isFlat ? costs : new Float64Array(rows * columns);
  let least = 0;
  let most = 0;
  let odd = -1;
  for (let row = 0, at = 0; row < rows; row += 1) {
    const line = isFlat ? costs.subarray(at, at + columns) : costs[row]!;
    if (line.length !== columns) return undefined;
    for (let column = 0; column < columns; column += 1, at += 1) {
      const cost = line[column]!;
      if (!isFlat) flat[at] = cost;
      if (cost === FORBIDDEN) continue;
      if (odd < 0 && !Number.isSafeInteger(cost)) odd = at;
      if (cost < least) least = cost;
      else if (cost > most) most = cost;
    }
  }
  return { flat, odd, least, most };
}

/** Costs with the order below them folded in: how many current pairs are kept. */
function favouring(
  current: readonly number[],
  costs: Float64Array,
  columns: number,
  unit: number,
): Float64Array {
  const scaled = costs.map((cost) => cost * unit);
  current.forEach((column, row) => {
    if (column >= 0 && column < columns && row < unit - 1) scaled[row * columns + column]! -= 1;
  });
  return scaled;
}

/**
 * One column more for each row, which leaves that row without. It costs more than any two plans can differ by, so it is
 * taken only where nothing else can be.
 */
function withExits(costs: Float64Array, rows: number, columns: number, without: number): Float64Array {
  const width = columns + rows;
  const wide = new Float64Array(rows * width).fill(FORBIDDEN);
  for (let row = 0; row < rows; row += 1) {
    wide.set(costs.subarray(row * columns, (row + 1) * columns), row * width);
    wide[row * width + columns + row] = without;
  }
  return wide;
}

/** Where the row that has a column goes when it is pushed out of it: a column, or one of these. */
const UNKNOWN = -1;
const END = -2;

/**
 * Walks the rows in order and gives each the lowest column that some optimum gives it. Optima are exactly the
 * assignments along tight pairs that leave only columns of price zero free, so each step is one backward search:
 * from the column the row gives up, and, if some column can be freed in exchange, from the free ones too.
 */
function settleTies(solver: AugmentingPaths, costs: Float64Array, rows: number, width: number): void {
  const { columnOf, rowOf, columnPrice } = solver;
  const next = new Int32Array(width);
  const tight = tightPairs(solver, costs, rows, width);
  const search = (ends: number[], fixed: number): number[] => {
    for (const column of ends) next[column] = END;
    for (const column of ends) {
      for (let at = tight.ofColumn[column]!; at < tight.ofColumn[column + 1]!; at += 1) {
        const row = tight.rows[at]!;
        const from = columnOf[row]!;
        if (row <= fixed || next[from] !== UNKNOWN) continue;
        next[from] = column;
        ends.push(from);
      }
    }
    return ends;
  };
  for (let fixed = 0; fixed < rows; fixed += 1) {
    const home = columnOf[fixed]!;
    let at = tight.ofRow[fixed]!;
    if (tight.columns[at] === home) continue;
    next.fill(UNKNOWN);
    const reached = search([home], fixed);
    const freed = rows < width ? reached.find((column) => columnPrice[column] === 0) : undefined;
    if (freed !== undefined) search(freeColumns(rowOf, width), fixed);
    while (next[tight.columns[at]!] === UNKNOWN) at += 1;
    rowOf[home] = -1;
    push(solver, fixed, tight.columns[at]!, next);
    if (rowOf[home]! >= 0 || freed === undefined || freed === home) continue;
    const row = rowOf[freed]!;
    rowOf[freed] = -1;
    push(solver, row, next[freed]!, next);
  }
}

/** The pairs without slack, both ways: the columns of row r stand at `ofRow[r]` and on, the rows of a column likewise. */
function tightPairs(
  { rowPrice, columnPrice }: AugmentingPaths,
  costs: Float64Array,
  rows: number,
  width: number,
) {
  const ofRow = new Int32Array(rows + 1);
  const ofColumn = new Int32Array(width + 1);
  const columns: number[] = [];
  for (let row = 0, at = 0; row < rows; row += 1) {
    const price = rowPrice[row]!;
    for (let column = 0; column < width; column += 1, at += 1) {
      if (costs[at]! - price !== columnPrice[column]!) continue;
      columns.push(column);
      ofColumn[column + 1]! += 1;
    }
    ofRow[row + 1] = columns.length;
  }
  for (let column = 0; column < width; column += 1) ofColumn[column + 1]! += ofColumn[column]!;
  const filled = ofColumn.slice();
  const rowsOf = new Int32Array(columns.length);
  for (let row = 0; row < rows; row += 1) {
    for (let at = ofRow[row]!; at < ofRow[row + 1]!; at += 1) rowsOf[filled[columns[at]!]!++] = row;
  }
  return { ofRow, ofColumn, columns, rows: rowsOf };
}

function freeColumns(rowOf: Int32Array, width: number): number[] {
  const free: number[] = [];
  for (let column = 0; column < width; column += 1) if (rowOf[column] === -1) free.push(column);
  return free;
}

/** Puts the row on the column, the row that was there on its next one, until nobody is pushed out. */
function push({ columnOf, rowOf }: AugmentingPaths, first: number, to: number, next: Int32Array): void {
  let row = first;
  let column = to;
  while (row >= 0) {
    const pushed = rowOf[column]!;
    rowOf[column] = row;
    columnOf[row] = column;
    row = pushed;
    column = next[column]!;
  }
}

function read(solver: AugmentingPaths, costs: Float64Array, rows: number, columns: number): Assignment {
  const columnOf: number[] = [];
  let cost = 0;
  let matched = 0;
  for (let row = 0; row < rows; row += 1) {
    const column = solver.columnOf[row]!;
    const isMade = column < columns;
    columnOf.push(isMade ? column : -1);
    if (!isMade) continue;
    cost += costs[row * columns + column]!;
    matched += 1;
  }
  return { columnOf, cost, matched };
}
