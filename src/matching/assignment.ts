import { fail, ok, type Result } from '../shared/result.ts';
import { breakTies } from './break-ties.ts';
import { type DenseMatching, denseMatching } from './dense-matching.ts';

/** A pair that is not allowed. */
export const FORBIDDEN = Infinity;

export interface AssignmentInput {
  readonly rows: number;
  readonly columns: number;
  /** Row-major whole numbers, or one array per row; FORBIDDEN if a pair is not allowed. */
  readonly costs: Float64Array | readonly (readonly number[])[];
  /** The current column of each row, -1 or missing for none; kept if that costs nothing. */
  readonly current?: readonly number[];
}

export interface Assignment {
  /** Column of each row, -1 if it has none. */
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
 * The exact minimum-cost assignment of rows to columns, of any sizes: as many rows as possible, then at the
 * least cost; among equals with as many current pairs as possible, then the lowest column for the first row,
 * the second, and so on. So the result does not depend on the algorithm, and passed back as `current` it
 * stays the same. `assign({ rows: 2, columns: 2, costs: [[1, 2], [2, 100]] })` gives columns 1, 0 and cost 4.
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
  return ok(read(solved as DenseMatching, costs, rows, columns));
}

/** The optimum with its ties broken; undefined if some row must stay without a column. */
function solve(costs: Float64Array, rows: number, width: number): DenseMatching | undefined {
  const solver = solverFor(rows, width);
  if (!solver.run(costs, rows, width)) return undefined;
  breakTies(solver, costs, rows, width);
  return solver;
}

let kept = { rows: 0, width: 0, solver: denseMatching(0, 0) };

/** Allocating takes longer than a small assignment, so the last buffers are reused. */
function solverFor(rows: number, width: number): DenseMatching {
  const fits = rows <= kept.rows && width <= kept.width;
  if (!fits) kept = { rows, width, solver: denseMatching(rows, width) };
  return kept.solver;
}

interface ReadCosts {
  readonly flat: Float64Array;
  /** Index of the first cost that is not a whole number, or -1. */
  readonly odd: number;
  /** Not above 0. */
  readonly least: number;
  /** Not below 0. */
  readonly most: number;
}

function readCosts({ costs, rows, columns }: AssignmentInput): ReadCosts | undefined {
  if (costs instanceof Float64Array) {
    return costs.length === rows * columns ? readLines([costs], costs.length) : undefined;
  }
  if (costs.length !== rows || costs.some((line) => line.length !== columns)) return undefined;
  return readLines(costs, columns);
}

function readLines(lines: readonly ArrayLike<number>[], length: number): ReadCosts {
  const flat = roomFor(lines.length * length);
  let least = 0;
  let most = 0;
  let areWhole = true;
  // Two lines at a time, which is faster; a last odd one is read twice.
  for (let first = 0; first < lines.length; first += 2) {
    const second = Math.min(first + 1, lines.length - 1);
    const ones = lines[first]!;
    const twos = lines[second]!;
    for (let at = 0; at < length; at += 1) {
      const one = ones[at]!;
      const two = twos[at]!;
      flat[first * length + at] = one;
      flat[second * length + at] = two;
      if (Math.floor(one) !== one || Math.floor(two) !== two) areWhole = false;
      if (one < least) least = one;
      else if (one > most && one !== FORBIDDEN) most = one;
      if (two < least) least = two;
      else if (two > most && two !== FORBIDDEN) most = two;
    }
  }
  const areSafe = areWhole && Number.isSafeInteger(least) && Number.isSafeInteger(most);
  const odd = areSafe ? -1 : flat.findIndex((cost) => cost !== FORBIDDEN && !Number.isSafeInteger(cost));
  return { flat, odd, least, most };
}

let room = new Float64Array(0);

/** Costs are read into one array, which is reused for the same size. */
function roomFor(size: number): Float64Array {
  if (room.length !== size) room = new Float64Array(size);
  return room;
}

/** Costs with the next order folded in: how many current pairs are kept. */
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
 * Adds one column per row that leaves the row unassigned. It costs more than any two plans can differ by, so
 * it is only used if nothing else is possible.
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

function read(solver: DenseMatching, costs: Float64Array, rows: number, columns: number): Assignment {
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
