import { describe, expect, test } from 'vitest';
import { type PlanAsked, planNews } from '../../../src/plan/setup/plan-news.ts';
import { isProven } from '../../../src/plan/setup/proven.ts';
import { FIRST_BUDGET } from '../../../src/plan/steps.ts';
import { bestAddition, planNextSetup, whatIf } from '../at-once.ts';
import { crowdScene } from '../crowd-scene.ts';
import { smallRig } from '../random-rig.ts';

const allNews = (asked: PlanAsked) => [...planNews(asked)].filter((news) => news !== undefined);

/** A crowd whose first answer is not proven (seed 1 of 24 voices on the bag's rig), so that another one follows. */
const crowd = () => crowdScene(1, 'bag', 24);

describe('the news of a plan', () => {
  test('are a first answer, the full one, and what would help', () => {
    const problem = crowd();
    expect(allNews({ what: 'plan', problem })).toEqual([
      { what: 'first', planned: planNextSetup(problem, FIRST_BUDGET) },
      { what: 'full', planned: planNextSetup(problem) },
      { what: 'addition', addition: bestAddition(problem) },
    ]);
  });

  test('are the same for the same question', () => {
    expect(allNews({ what: 'plan', problem: crowd() })).toEqual(allNews({ what: 'plan', problem: crowd() }));
  });

  test('begin with the full answer where it is there at once', () => {
    const problem = smallRig(1, 'roomy', 3);
    expect(allNews({ what: 'plan', problem }).map(({ what }) => what)).toEqual(['full', 'addition']);
  });

  test('say what cannot be planned', () => {
    const problem = { ...crowd(), tracks: [] };
    const broken = { ...problem, inputs: [...problem.inputs, ...problem.inputs] };
    const [full] = allNews({ what: 'plan', problem: broken });
    expect(full).toMatchObject({ what: 'full', planned: { ok: false, problem: { code: 'id-used-twice' } } });
  });

  test('of one more voice are what the plan of both says', () => {
    const scene = crowd();
    const problem = {
      ...scene,
      voices: scene.voices.map((one) => ({ ...one, needed: one.id !== 'voice1' })),
    };
    const now = planNextSetup(problem);
    const answer = whatIf(problem, 'voice1');
    if (!now.ok || !answer.ok) throw new Error('no answer');
    expect(answer.value.isRecorded).toBe(true);
    expect(allNews({ what: 'what-if', problem, voice: 'voice1', now: now.value })).toEqual([
      { what: 'what-if', voice: 'voice1', answer: answer.value },
    ]);
  });

  test('come in many steps, so that others can come between', () => {
    const steps = [...planNews({ what: 'plan', problem: crowd() })];
    const plan = planNextSetup(crowd());
    if (!plan.ok) throw new Error('no plan');
    // A step is one part of the search: some dozen bounds at most.
    expect(steps.length).toBeGreaterThan(plan.value.effort / 20);
    expect(isProven(plan.value)).toBe(true);
  });
});
