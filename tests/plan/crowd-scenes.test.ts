import { describe, expect, test } from 'vitest';
import { planNextSetup } from '../../src/plan/plan-next-setup.ts';
import { crowdScene, READY_RIGS } from './crowd-scene.ts';
import { mostRecorded } from './most-recorded.ts';

const SCENES = 20;

describe.each(READY_RIGS)('a crowd on the ready rig "%s"', (rig) => {
  test(`20 to 30 needed at once: nobody is left out who need not be, and that is proven (seeds 1 to ${SCENES})`, () => {
    const found: unknown[] = [];
    const wanted: unknown[] = [];
    for (let seed = 1; seed <= SCENES; seed += 1) {
      const voices = 20 + (seed % 11);
      const problem = crowdScene(seed, rig, voices);
      const plan = planNextSetup(problem);
      if (!plan.ok) throw new Error(plan.problem.code);
      const { recorded, leftOut, exact } = plan.value;
      expect(recorded.length + leftOut.length).toBe(voices);
      found.push({ seed, voices, leftOut: leftOut.length, proven: exact.leftOut });
      // What the plan records is possible, and no plan records more than the bound: so where they meet, it is the most.
      wanted.push({ seed, voices, leftOut: voices - mostRecorded(problem), proven: true });
    }
    expect(found).toEqual(wanted);
  });
});
