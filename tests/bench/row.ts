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

/** The median of several runs, after one that is not counted. */
export function medianMs(runs: number, work: () => unknown): number {
  work();
  const times = Array.from({ length: runs }, () => {
    const from = performance.now();
    work();
    return performance.now() - from;
  });
  return times.sort((a, b) => a - b)[runs >> 1]!;
}

/** The medians of two works run in turn, so that quick and slow moments of the machine fall on both. */
export function mediansInTurn(runs: number, ours: () => unknown, theirs: () => unknown): [number, number] {
  const timed = (work: () => unknown): number => {
    const from = performance.now();
    work();
    return performance.now() - from;
  };
  ours();
  theirs();
  const times = Array.from({ length: runs }, () => [timed(ours), timed(theirs)] as const);
  const middle = (of: 0 | 1): number => times.map((both) => both[of]).sort((a, b) => a - b)[runs >> 1]!;
  return [middle(0), middle(1)];
}
