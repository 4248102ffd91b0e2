import { describe, expect, test } from 'vitest';
import type { PlanProblem } from '../../src/plan/plan-problem.ts';
import type { Plan } from '../../src/plan/setup/plan-next-setup.ts';
import { FIRST_BUDGET } from '../../src/plan/steps.ts';
import { planNextSetup } from './at-once.ts';
import { crowdScene, READY_RIGS } from './crowd-scene.ts';
import { asList, compare } from './every-plan.ts';
import { mostRecorded } from './most-recorded.ts';

const SCENES = 20;
const scenes = (rig: string) =>
  Array.from({ length: SCENES }, (_value, at) => {
    const voices = 20 + ((at + 1) % 11);
    return { seed: at + 1, voices, problem: crowdScene(at + 1, rig, voices) };
  });

const planned = (problem: PlanProblem, budget?: number): Plan => {
  const plan = planNextSetup(problem, budget);
  if (!plan.ok) throw new Error(plan.problem.code);
  return plan.value;
};

describe.each(READY_RIGS)('a crowd of 20 to 30 on the ready rig "%s"', (rig) => {
  test(`leaves nobody out who need not be, and that is proven, with gangs and packs (seeds 1 to ${SCENES})`, () => {
    const found: unknown[] = [];
    const wanted: unknown[] = [];
    for (const { seed, voices, problem } of scenes(rig)) {
      const { recorded, leftOut, exact } = planned(problem);
      expect(recorded.length + leftOut.length).toBe(voices);
      found.push({
        seed,
        voices,
        leftOut: leftOut.length,
        proven: [exact.leftOut, exact.ganged, exact.packs],
      });
      // What the plan records is possible, and no plan records more than the bound: so where they meet, it is the most.
      const least = voices - mostRecorded(problem);
      wanted.push({ seed, voices, leftOut: least, proven: [true, true, true] });
    }
    expect(found).toEqual(wanted);
  });

  test(`has a first answer that leaves out no more, and a full one that is never worse (seeds 1 to ${SCENES})`, () => {
    for (const { seed, problem } of scenes(rig)) {
      const first = planned(problem, FIRST_BUDGET);
      const full = planned(problem);
      expect({ seed, out: first.leftOut.length }).toEqual({ seed, out: full.leftOut.length });
      expect({ seed, worse: compare(asList(full.cost), asList(first.cost)) > 0 }).toEqual({
        seed,
        worse: false,
      });
    }
  });
});
