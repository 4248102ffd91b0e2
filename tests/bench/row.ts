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
