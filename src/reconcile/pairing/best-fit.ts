import { assign, FORBIDDEN } from '../../matching/assignment.ts';
import type { Candidate } from './candidates.ts';
import { LEAST_BITS } from './likelihood.ts';

/** An alternative for a take, and how many bits the total would lose by it. */
export interface Alternative {
  /** Null for no recording at all. */
  readonly recording: number | null;
  readonly loss: number;
}

export interface Fitted {
  readonly take: number;
  readonly recording: number | null;
  /** All other choices, cheapest first. */
  readonly others: readonly Alternative[];
}

/**
 * The exact best overall fit of recordings to takes: the most bits above `LEAST_BITS` in total. Takes
 * that share no candidate, even indirectly, are fitted separately. Takes without candidates are left out.
 */
export const bestFit = (candidates: readonly Candidate[]): Fitted[] =>
  components(candidates)
    .flatMap(fitComponent)
    .sort((a, b) => a.take - b.take);

function components(candidates: readonly Candidate[]): Candidate[][] {
  const parent = new Map<string, string>();
  const rootOf = (name: string): string => {
    let root = name;
    while (parent.get(root) !== undefined && parent.get(root) !== root) root = parent.get(root)!;
    for (let at = name; at !== root; ) {
      const next = parent.get(at)!;
      parent.set(at, root);
      at = next;
    }
    return root;
  };
  for (const { take, recording } of candidates) {
    const root = rootOf(`take ${take}`);
    parent.set(root, root);
    parent.set(rootOf(`file ${recording}`), root);
  }
  const groups = new Map<string, Candidate[]>();
  for (const candidate of candidates) {
    const root = rootOf(`take ${candidate.take}`);
    const group = groups.get(root);
    if (group) group.push(candidate);
    else groups.set(root, [candidate]);
  }
  return [...groups.values()];
}

/** Costs are whole, so that sums of them are exact. */
const PER_BIT = 16;

/** One component as a matrix: a column for each recording, then one for each take to stay without. */
interface Matrix {
  readonly takes: readonly number[];
  readonly recordings: readonly number[];
  readonly columns: number;
  readonly costs: Float64Array;
}

/** More connected takes than this are so alike that no fit means anything, and fitting takes long. */
const MOST_TAKES = 400;

function fitComponent(candidates: readonly Candidate[]): Fitted[] {
  if (new Set(candidates.map(({ take }) => take)).size > MOST_TAKES) return unfitted(candidates);
  const matrix = matrixOf(candidates);
  const { takes, recordings, columns, costs } = matrix;
  const best = assign({ rows: takes.length, columns, costs });
  if (!best.ok) throw new Error(`Bits that cannot be summed: ${best.problem.code}`);
  const { columnOf } = best.value;
  const losses = lossesOf(matrix, columnOf);
  const named = (column: number): number | null => recordings[column] ?? null;
  return takes.map((take, row) => {
    const others = losses[row]!.map(
      ({ column, loss }): Alternative => ({ recording: named(column), loss: loss / PER_BIT }),
    ).sort((a, b) => a.loss - b.loss);
    return { take, recording: named(columnOf[row]!), others };
  });
}

/** Nobody has a recording and everybody keeps all candidates, so the user is asked about all of them. */
function unfitted(candidates: readonly Candidate[]): Fitted[] {
  const others = new Map<number, Alternative[]>();
  for (const { take, recording } of candidates) {
    const list = others.get(take);
    if (list) list.push({ recording, loss: 0 });
    else others.set(take, [{ recording, loss: 0 }]);
  }
  return [...others].map(([take, list]) => ({ take, recording: null, others: list }));
}

function matrixOf(candidates: readonly Candidate[]): Matrix {
  const takes = [...new Set(candidates.map(({ take }) => take))].sort((a, b) => a - b);
  const recordings = [...new Set(candidates.map(({ recording }) => recording))].sort((a, b) => a - b);
  const rowOf = new Map(takes.map((take, row) => [take, row]));
  const columnOf = new Map(recordings.map((recording, column) => [recording, column]));
  const columns = recordings.length + takes.length;
  const costs = new Float64Array(takes.length * columns).fill(FORBIDDEN);
  for (const { take, recording, bits } of candidates)
    costs[rowOf.get(take)! * columns + columnOf.get(recording)!] = Math.round((LEAST_BITS - bits) * PER_BIT);
  for (const row of takes.keys()) costs[row * columns + recordings.length + row] = 0;
  return { takes, recordings, columns, costs };
}

/**
 * For every pair not made, what the total loses if it is. Making it starts a chain: whoever has that column
 * takes another, until somebody takes a free one. Shortest chains between all takes, after Floyd (1962).
 */
function lossesOf(
  { takes, columns, costs }: Matrix,
  columnOf: readonly number[],
): { column: number; loss: number }[][] {
  const rows = takes.length;
  const ownerOf = new Map(columnOf.map((column, row) => [column, row]));
  const extra = (row: number, column: number): number =>
    costs[row * columns + column]! - costs[row * columns + columnOf[row]!]!;
  // The last node stands for every free column; a chain that starts there leaves its first column free.
  const size = rows + 1;
  const far = new Float64Array(size * size).fill(Infinity);
  for (let row = 0; row < rows; row += 1) {
    far[rows * size + row] = 0;
    for (let column = 0; column < columns; column += 1) {
      const to = row * size + (ownerOf.get(column) ?? rows);
      if (column !== columnOf[row]) far[to] = Math.min(far[to]!, extra(row, column));
    }
  }
  for (let at = 0; at < size; at += 1) far[at * size + at] = 0;
  shortenAll(far, size);
  return takes.map((_, row) => {
    const losses: { column: number; loss: number }[] = [];
    for (let column = 0; column < columns; column += 1) {
      const loss = extra(row, column) + far[(ownerOf.get(column) ?? rows) * size + row]!;
      if (column !== columnOf[row] && loss < Infinity) losses.push({ column, loss });
    }
    return losses;
  });
}

function shortenAll(far: Float64Array, size: number): void {
  for (let through = 0; through < size; through += 1) {
    for (let from = 0; from < size; from += 1) {
      const first = far[from * size + through]!;
      if (first === Infinity) continue;
      for (let to = 0; to < size; to += 1) {
        const length = first + far[through * size + to]!;
        if (length < far[from * size + to]!) far[from * size + to] = length;
      }
    }
  }
}
