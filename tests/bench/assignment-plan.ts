import { bestAddition } from '../../src/plan/best-addition.ts';
import { planNextSetup } from '../../src/plan/plan-next-setup.ts';
import type { PlanProblem } from '../../src/plan/plan-problem.ts';
import { whatIf } from '../../src/plan/what-if.ts';
import { type SceneChange, sceneChange } from './assignment-rigs.ts';

/** Median and worst over the rigs in milliseconds, and how many were proven best in all five orders. */
export interface PlanMeasure {
  readonly name: string;
  readonly medianMs: number;
  readonly worstMs: number;
  readonly exact: number;
  readonly rigs: number;
}

const RIGS = 24;
const LARGE: SceneChange = {
  performers: 24,
  packs: 24,
  needed: 24,
  tracks: 32,
  routing: 'fixed',
  priorities: 'few',
  broken: 1,
  routeWeight: 1,
};

const CASES: readonly (readonly [name: string, change: Partial<SceneChange>])[] = [
  ['24 performers, 24 packs, 24 channels, 20 inputs, 32 tracks', {}],
  ['the same, any input to any track', { routing: 'free' }],
  ['the same, every one of another priority', { routing: 'free', priorities: 'distinct' }],
  ['the same, 16 needed', { routing: 'free', needed: 16 }],
  ['the same, 16 needed on 16 tracks with gangs', { needed: 16, tracks: 16 }],
  ['the same, 24 needed on 16 tracks with gangs', { tracks: 16 }],
  ['the same, 24 needed on 16 tracks, any input to any', { routing: 'free', tracks: 16 }],
];

/** Plans 24 random scene changes (seeds 1 to 24) of every kind; the middle of five runs of each counts. */
export function run(): PlanMeasure[] {
  const measured = CASES.map(([name, change]) => measure(name, rigsOf(change), (rig) => planned(rig)));
  const rigs = rigsOf({});
  return [
    ...measured,
    measure('what if one more were needed, 16 needed', rigsOf({ needed: 16 }), (rig) => {
      const other = rig.voices.find(({ needed }) => !needed)!;
      const answer = whatIf(rig, other.id);
      return answer.ok && answer.value.plan.exact.newTracks;
    }),
    measure(
      'which addition would help most, 24 needed (counted: one would)',
      rigs,
      (rig) => !!bestAddition(rig),
    ),
  ];
}

/** A random generator that gives the same rigs on every machine (Park and Miller, CACM 31 (1988), multiplier 48271). */
function generator(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}

const rigsOf = (change: Partial<SceneChange>): PlanProblem[] =>
  Array.from({ length: RIGS }, (_value, at) => sceneChange(generator(at + 1), { ...LARGE, ...change }));

const planned = (rig: PlanProblem): boolean => {
  const plan = planNextSetup(rig);
  return plan.ok && plan.value.exact.newTracks;
};

function measure(
  name: string,
  rigs: readonly PlanProblem[],
  ask: (rig: PlanProblem) => boolean,
): PlanMeasure {
  for (const rig of rigs) ask(rig);
  const times = rigs.map((rig) => {
    const runs = Array.from({ length: 5 }, () => {
      const start = performance.now();
      ask(rig);
      return performance.now() - start;
    });
    return runs.sort((a, b) => a - b)[2]!;
  });
  times.sort((a, b) => a - b);
  return {
    name,
    medianMs: times[times.length >> 1]!,
    worstMs: times[times.length - 1]!,
    exact: rigs.filter(ask).length,
    rigs: rigs.length,
  };
}
