import { munkres } from 'munkres';
import { assign } from '../../src/matching/assignment.ts';

/** One measured line: the median of the runs, in milliseconds. */
export interface Measure {
  readonly name: string;
  readonly ms: number;
}

type Costs = number[][];

/** An odd number, so that each of the two is first at each matrix. */
const SEEDS = 9;
const WARM_UP = 1500;
const RUNS = 401;

/** Whole costs 1 to 100 (seeds 7 and on). */
function matrices(n: number): Costs[] {
  return Array.from({ length: SEEDS }, (_value, at) => {
    let state = 7 + at;
    const next = () => {
      state = (state * 48_271) % 2_147_483_647;
      return 1 + (state % 100);
    };
    return Array.from({ length: n }, () => Array.from({ length: n }, next));
  });
}

/**
 * Both solve the same matrices in turn, and go first in turn, so that neither has a warmer machine. Nine matrices, as
 * the second time it meets one a processor has learned its branches, and none is solved twice outside of a bench.
 */
function compare(all: readonly Costs[], works: readonly ((costs: Costs) => unknown)[]): number[] {
  const times = works.map((): number[] => []);
  for (let turn = 0; turn < WARM_UP + RUNS; turn += 1) {
    const costs = all[turn % all.length]!;
    for (let step = 0; step < works.length; step += 1) {
      const at = (turn + step) % works.length;
      const start = performance.now();
      works[at]!(costs);
      if (turn >= WARM_UP) times[at]!.push(performance.now() - start);
    }
  }
  return times.map((of) => of.sort((a, b) => a - b)[of.length >> 1]!);
}

/** The assignment of n rows to n columns beside the npm package munkres 2, which settles no ties and checks no input. */
export function run(): Measure[] {
  return [24, 64].flatMap((n) => {
    const all = matrices(n);
    const ours = (costs: Costs) => assign({ rows: n, columns: n, costs });
    for (const costs of all) {
      const best = munkres(costs).reduce((sum, [row, column]) => sum + costs[row]![column]!, 0);
      const found = ours(costs);
      if (!found.ok || found.value.cost !== best) throw new Error('Not the cost that munkres finds');
    }
    const [mine, theirs] = compare(all, [ours, munkres]);
    return [
      { name: `assignment ${n} by ${n}, ours with settled ties`, ms: mine! },
      { name: `assignment ${n} by ${n}, munkres`, ms: theirs! },
    ];
  });
}
