import type { PlanProblem } from '../../src/plan/plan-problem.ts';
import { type Addition, bestAdditionSteps } from '../../src/plan/setup/best-addition.ts';
import { type Plan, type Planned, planSteps } from '../../src/plan/setup/plan-next-setup.ts';
import { whatIfSteps } from '../../src/plan/setup/what-if.ts';
import { allAtOnce, FULL_BUDGET } from '../../src/plan/steps.ts';

// The planner gives up the thread between steps; a test takes them all at once.

export const planNextSetup = (problem: PlanProblem, budget = FULL_BUDGET): Planned =>
  allAtOnce(planSteps(problem, budget));

export const bestAddition = (problem: PlanProblem): Addition | undefined =>
  allAtOnce(bestAdditionSteps(problem));

export const whatIf = (problem: PlanProblem, voice: string, now?: Plan) =>
  allAtOnce(whatIfSteps(problem, voice, now));
