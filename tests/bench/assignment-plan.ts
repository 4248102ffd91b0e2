import type { PlanProblem } from '../../src/plan/plan-problem.ts';
import { isProven } from '../../src/plan/setup/proven.ts';
import { FIRST_BUDGET } from '../../src/plan/steps.ts';
import { bestAddition, planNextSetup, whatIf } from '../plan/at-once.ts';
import { crowdScene, READY_RIGS } from '../plan/crowd-scene.ts';
import { type SceneChange, sceneChange } from './assignment-rigs.ts';
import { medianMs } from './row.ts';

/** The slowest of so many rigs in milliseconds; `proven` of them are so in all five orders. */
export interface PlanMeasure {
  readonly name: string;
  readonly slowestMs: number;
  readonly budgetMs?: number;
  readonly proven?: number;
  readonly rigs: number;
}

/** A first answer that nobody waits for, and the full one before anybody has read that. */
const FIRST_MS = 60;
const FULL_MS = 1000;

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

/** Plans 24 crowds on each ready rig and 24 random scene changes of every kind (seeds 1 to 24). */
export function run(): PlanMeasure[] {
  const crowds = READY_RIGS.map(
    (rig) =>
      [`24 voices on the ready rig "${rig}"`, list((seed) => crowdScene(seed, rig, LARGE.needed))] as const,
  );
  const changes = CASES.map(([name, change]) => [name, rigsOf(change)] as const);
  return [
    ...[...crowds, ...changes].flatMap(([name, rigs]) => firstAndFull(name, rigs)),
    slowest('what if one more were needed, 16 needed', rigsOf({ needed: 16 }), (rig) => {
      const other = rig.voices.find(({ needed }) => !needed)!;
      whatIf(rig, other.id);
    }),
    slowest('which addition would help most, 24 needed', rigsOf({}), (rig) => {
      bestAddition(rig);
    }),
  ];
}

function firstAndFull(name: string, rigs: readonly PlanProblem[]): PlanMeasure[] {
  const plans = rigs.map((rig) => {
    const plan = planNextSetup(rig);
    if (!plan.ok || !plan.value.exact.leftOut) throw new Error(`${name}: who is recorded is not proven`);
    return plan.value;
  });
  const first = slowest(`${name}, first answer`, rigs, (rig) => planNextSetup(rig, FIRST_BUDGET));
  const full = slowest(`${name}, in full`, rigs, (rig) => planNextSetup(rig));
  return [
    { ...first, budgetMs: FIRST_MS },
    { ...full, budgetMs: FULL_MS, proven: plans.filter(isProven).length },
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

const list = (make: (seed: number) => PlanProblem): PlanProblem[] =>
  Array.from({ length: RIGS }, (_value, at) => make(at + 1));

const rigsOf = (change: Partial<SceneChange>): PlanProblem[] =>
  list((seed) => sceneChange(generator(seed), { ...LARGE, ...change }));

/** Of each rig the middle of three runs counts. */
function slowest(
  name: string,
  rigs: readonly PlanProblem[],
  ask: (rig: PlanProblem) => unknown,
): PlanMeasure {
  const times = rigs.map((rig) => medianMs(3, () => ask(rig)));
  return { name, slowestMs: Math.max(...times), rigs: rigs.length };
}
