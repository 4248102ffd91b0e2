import { munkres } from 'munkres';
import { assign } from '../../src/plan/assignment.ts';

/** One measured line: the median of the runs, in milliseconds. */
export interface Measure {
  readonly name: string;
  readonly ms: number;
}

export function median(runs: number, work: () => unknown): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[runs >> 1]!;
}

/** The assignment of n rows to n columns with whole costs 1 to 100 (seed 7), beside the npm package munkres 2. */
export function run(): Measure[] {
  return [24, 64].flatMap((n) => {
    let state = 7;
    const next = () => {
      state = (state * 48_271) % 2_147_483_647;
      return 1 + (state % 100);
    };
    const costs = Array.from({ length: n }, () => Array.from({ length: n }, next));
    const ours = () => assign({ rows: n, columns: n, costs });
    const theirs = () => munkres(costs);
    const best = theirs().reduce((sum, [row, column]) => sum + costs[row]![column]!, 0);
    const found = ours();
    if (!found.ok || found.value.cost !== best) throw new Error('Not the cost that munkres finds');
    median(20, ours);
    median(20, theirs);
    return [
      { name: `assignment ${n} by ${n}, ours with settled ties`, ms: median(51, ours) },
      { name: `assignment ${n} by ${n}, munkres`, ms: median(51, theirs) },
    ];
  });
}
