import type { PlanProblem } from '../plan-problem.ts';
import { FIRST_BUDGET, FULL_BUDGET } from '../steps.ts';
import { type Addition, bestAdditionSteps } from './best-addition.ts';
import { type Plan, type Planned, planSteps } from './plan-next-setup.ts';
import { isProven } from './proven.ts';
import { type WhatIf, whatIfSteps } from './what-if.ts';

/** A question to the planner. `now` is its last plan for the same problem. */
export type PlanAsked =
  | { readonly what: 'plan'; readonly problem: PlanProblem }
  | {
      readonly what: 'what-if';
      readonly problem: PlanProblem;
      readonly voice: string;
      readonly now: Plan;
    };

/** Its answers, in this order; there is no first plan if the full one comes at once. */
export type PlanNews =
  | { readonly what: 'first'; readonly planned: Planned }
  | { readonly what: 'full'; readonly planned: Planned }
  | { readonly what: 'addition'; readonly addition: Addition | undefined }
  | { readonly what: 'what-if'; readonly voice: string; readonly answer: WhatIf | undefined };

/** Works through a question, with news between the steps. */
export function* planNews(asked: PlanAsked): Generator<PlanNews | undefined, void> {
  const { problem } = asked;
  if (asked.what === 'what-if') {
    const { voice, now } = asked;
    const answer = yield* whatIfSteps(problem, voice, now);
    yield { what: 'what-if', voice, answer: answer.ok ? answer.value : undefined };
    return;
  }
  const first = yield* planSteps(problem, FIRST_BUDGET);
  const isLast = !first.ok || isProven(first.value);
  if (!isLast) yield { what: 'first', planned: first };
  const full = isLast ? first : yield* planSteps(problem, FULL_BUDGET);
  yield { what: 'full', planned: full };
  const isShort = full.ok && full.value.leftOut.length > 0;
  yield { what: 'addition', addition: isShort ? yield* bestAdditionSteps(problem) : undefined };
}
