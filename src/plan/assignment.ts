import { fail, ok, type Result } from '../shared/result.ts';
import { type AugmentingPaths, augmentingPaths } from './augmenting-paths.ts';

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
  const costs = flatten(input);
  if (!costs) return fail({ code: 'costs-of-wrong-size', rows, columns });
  const odd = costs.findIndex((cost) => cost !== FORBIDDEN && !Number.isSafeInteger(cost));
  if (odd >= 0) {
    return fail({ code: 'cost-not-whole', row: Math.floor(odd / columns), column: odd % columns });
  }
  const scaled = scale(costs, input);
  if (!(scaled.largestTotal < Number.MAX_SAFE_INTEGER)) {
    return fail({ code: 'costs-too-large', total: scaled.largestTotal });
  }
  const width = columns + rows;
  const solver = augmentingPaths(rows, width);
  solver.run(scaled.costs, rows, width);
  settleTies(solver, scaled.costs, rows, width);
  return ok(read(solver, costs, rows, columns));
}

function flatten({ costs, rows, columns }: AssignmentInput): Float64Array | undefined {
  if (costs instanceof Float64Array) return costs.length === rows * columns ? costs : undefined;
  if (costs.length !== rows || costs.some((row) => row.length !== columns)) return undefined;
  const flat = new Float64Array(rows * columns);
  costs.forEach((row, at) => {
    flat.set(row, at * columns);
  });
  return flat;
}

/**
 * Costs with the two lower orders folded in, and one column more for each row, which leaves that row without.
 * That column costs more than any two plans can differ by, so it is taken only where nothing else can be.
 */
function scale(costs: Float64Array, { rows, columns, current }: AssignmentInput) {
  const unit = rows + 1;
  let [least, most] = [0, 0];
  for (const cost of costs) {
    if (cost === FORBIDDEN) continue;
    least = Math.min(least, cost);
    most = Math.max(most, cost);
  }
  const without = ((most - least) * rows + 1) * unit + most * unit;
  const width = columns + rows;
  const scaled = new Float64Array(rows * width).fill(FORBIDDEN);
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      const cost = costs[row * columns + column]!;
      if (cost !== FORBIDDEN)
        scaled[row * width + column] = cost * unit + (current?.[row] === column ? 0 : 1);
    }
    scaled[row * width + columns + row] = without;
  }
  return { costs: scaled, largestTotal: (without - least * unit + 1) * (rows + 1) };
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
  const { columnOf, rowOf, rowPrice, columnPrice } = solver;
  const next = new Int32Array(width);
  const isTight = (row: number, column: number) =>
    costs[row * width + column]! - rowPrice[row]! === columnPrice[column]!;
  const search = (ends: number[], fixed: number): number[] => {
    for (const column of ends) next[column] = END;
    for (const column of ends) {
      for (let row = fixed + 1; row < rows; row += 1) {
        const from = columnOf[row]!;
        if (next[from] !== UNKNOWN || !isTight(row, column)) continue;
        next[from] = column;
        ends.push(from);
      }
    }
    return ends;
  };
  for (let fixed = 0; fixed < rows; fixed += 1) {
    const home = columnOf[fixed]!;
    let lowest = 0;
    while (!isTight(fixed, lowest)) lowest += 1;
    if (lowest === home) continue;
    next.fill(UNKNOWN);
    const freed = search([home], fixed).find((column) => columnPrice[column] === 0);
    if (freed !== undefined) search(indexesOf(rowOf.subarray(0, width), -1), fixed);
    let column = lowest;
    while (next[column] === UNKNOWN || !isTight(fixed, column)) column += 1;
    rowOf[home] = -1;
    push(solver, fixed, column, next);
    if (rowOf[home]! >= 0 || freed === undefined || freed === home) continue;
    const row = rowOf[freed]!;
    rowOf[freed] = -1;
    push(solver, row, next[freed]!, next);
  }
}

const indexesOf = (array: Int32Array, value: number): number[] =>
  Array.from(array.keys()).filter((at) => array[at] === value);

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
  const columnOf = Array.from(solver.columnOf.subarray(0, rows), (column) =>
    column < columns ? column : -1,
  );
  const pairs = columnOf.map((column, row) => ({ row, column })).filter(({ column }) => column >= 0);
  const cost = pairs.reduce((sum, { row, column }) => sum + costs[row * columns + column]!, 0);
  return { columnOf, cost, matched: pairs.length };
}
