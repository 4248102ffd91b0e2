/** One line of the bench. Times are medians in milliseconds of runs in this process. */
export interface Row {
  readonly work: string;
  readonly ours: number;
  readonly unit: 'ms' | 'µs' | 'bytes';
  /** The same work on the same data by somebody else, whose answer was the same. */
  readonly other?: { readonly by: string; readonly value: number };
  /** The most that `ours` may be. */
  readonly budget?: number;
  /** The least that other / ours may be. */
  readonly ratioBudget?: number;
}

/** A row so far over its budget is at it: no machine measures the same twice. */
const AT_BUDGET = 1.1;

/** Whether a row keeps its budgets, and in which words; empty where it has none. */
export function verdictOn({ ours, other, budget, ratioBudget }: Row): 'kept' | 'at budget' | 'MISSED' | '' {
  if (budget === undefined && ratioBudget === undefined) return '';
  const ratio = other ? other.value / ours : Number.POSITIVE_INFINITY;
  const over = Math.max(ours / (budget ?? Number.POSITIVE_INFINITY), (ratioBudget ?? 0) / ratio);
  if (over <= 1) return 'kept';
  return over <= AT_BUDGET ? 'at budget' : 'MISSED';
}

function timed(work: () => unknown): number {
  const from = performance.now();
  work();
  return performance.now() - from;
}

const middle = (times: number[]): number => times.sort((a, b) => a - b)[times.length >> 1]!;

/** The median of several runs, after one that is not counted. */
export function medianMs(runs: number, work: () => unknown): number {
  work();
  return middle(Array.from({ length: runs }, () => timed(work)));
}

/** The medians of two works run in turn, so that quick and slow moments of the machine fall on both. */
export function mediansInTurn(runs: number, ours: () => unknown, theirs: () => unknown): [number, number] {
  ours();
  theirs();
  const times = Array.from({ length: runs }, () => [timed(ours), timed(theirs)] as const);
  return [middle(times.map(([one]) => one)), middle(times.map(([, other]) => other))];
}
