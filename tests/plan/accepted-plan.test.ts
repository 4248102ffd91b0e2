import { afterAll, describe, expect, test } from 'vitest';
import { diceOf } from '../../sample-days/dice.ts';
import { STARTING_RIGS } from '../../src/commands/rig/starting-rigs.ts';
import type { Day, VoiceId } from '../../src/day/model.ts';
import { problemOf } from '../../src/plan/day/day-problem.ts';
import { neededNow } from '../../src/plan/day/plan-facts.ts';
import { setupFacts } from '../../src/plan/day/setup-plans.ts';
import type { Move, RecordedVoice } from '../../src/plan/moves.ts';
import type { PlanProblem } from '../../src/plan/plan-problem.ts';
import type { Plan } from '../../src/plan/setup/plan-next-setup.ts';
import { FIRST_BUDGET } from '../../src/plan/steps.ts';
import { LONG, noteFault } from '../browser/faults-table.ts';
import { applyPlan } from './apply-plan.ts';
import { planNextSetup } from './at-once.ts';
import { compare } from './every-plan.ts';
import { brokenPromises } from './far-end.ts';
import { type RandomDay, randomDay } from './random-day.ts';
import { missingLinks } from './standing.ts';

const DAYS = LONG ? 300 : 40;
const RIGS = STARTING_RIGS.map(({ id }) => id);

/** What the runs met, so that a run that met nothing of a kind is seen. */
const met = { plans: 0, promises: 0, broken: 0, unproven: 0, better: 0, faults: 0, gangs: 0, parts: 0 };
const moves: Record<Move['kind'], number> = { take: 0, fit: 0, throw: 0, replug: 0, retune: 0, route: 0 };

const upper = ({ cost }: Plan): number[] => [...cost.leftOut, ...cost.ganged];

function planFor(day: Day, wanted: ReadonlySet<VoiceId>): Plan | undefined {
  const plan = planNextSetup(problemOf(day, wanted));
  if (plan.ok) return plan.value;
  // One pack pinned to two people is a fault of the day, and said instead of a plan.
  expect(plan.problem.code).toBe('pinned-twice');
  return undefined;
}

/**
 * What is wrong after a plan was accepted whole. Asked again there must be no moves; only where the search stopped
 * before who is recorded was proven may it find something, and then it must be better.
 */
function wrongAfter(before: Day, wanted: ReadonlySet<VoiceId>, plan: Plan, after: Day): string[] {
  const broken = brokenPromises(before, after, plan.recorded);
  const again = planFor(after, wanted)!;
  if (again.moves.length === 0) return broken;
  if (plan.exact.leftOut && plan.exact.ganged)
    return [...broken, `asked again: ${JSON.stringify(again.moves)}`];
  met.better += 1;
  return compare(upper(again), upper(plan)) < 0 ? broken : [...broken, 'asked again: moves, and no better'];
}

/** Those whose chain the accepted moves complete, and those who are still coming or stood before. */
function parted(problem: PlanProblem, { recorded }: Plan, accepted: readonly Move[]) {
  const then = applyPlan(problem, accepted);
  const isCompleted = (one: RecordedVoice): boolean =>
    missingLinks(problem, one).length > 0 && missingLinks(then, one).length === 0;
  return {
    completed: recorded.filter(isCompleted),
    others: recorded.filter((one) => !isCompleted(one)),
  };
}

function wrongInPart({ day, wanted, after }: RandomDay, plan: Plan, seed: number): string[] {
  const dice = diceOf(seed);
  const accepted = plan.moves.filter(() => dice.below(2) === 0);
  if (accepted.length === plan.moves.length) return [];
  met.parts += 1;
  const then = after(setupFacts(day, { wanted }, [plan], [accepted]));
  const { completed, others } = parted(problemOf(day, wanted), plan, accepted);
  return brokenPromises(day, then, completed, others).map((text) => `in part: ${text}`);
}

/** The answer of the first moment, which may be accepted before the search has ended, keeps what it promises too. */
function wrongAtFirst({ day, wanted, after }: RandomDay): string[] {
  const first = planNextSetup(problemOf(day, wanted), FIRST_BUDGET);
  if (!first.ok) return [];
  const then = after(setupFacts(day, { wanted }, [first.value]));
  return brokenPromises(day, then, first.value.recorded).map((text) => `the first answer: ${text}`);
}

describe.each(RIGS)('on the ready rig %s', (rig) => {
  test(`every accepted plan records whom it promised, and asked again moves nothing: ${DAYS} random days`, () => {
    for (let seed = 1; seed <= DAYS; seed += 1) {
      const random = randomDay(rig, seed);
      const { day, wanted, after } = random;
      const plan = planFor(day, wanted);
      if (!plan) {
        met.faults += 1;
        continue;
      }
      const then = after(setupFacts(day, { wanted }, [plan]));
      const wrong = [
        ...wrongAfter(day, wanted, plan, then),
        ...wrongInPart(random, plan, seed),
        ...wrongAtFirst(random),
      ];
      met.plans += 1;
      met.promises += plan.recorded.length;
      met.broken += wrong.length;
      met.gangs += plan.recorded.filter(({ gangedWith }) => gangedWith.length > 0).length;
      if (!plan.exact.leftOut || !plan.exact.ganged) met.unproven += 1;
      for (const { kind } of plan.moves) moves[kind] += 1;
      expect({ seed, wrong }).toEqual({ seed, wrong: [] });
      expect({ seed, needed: [...neededNow(then)].sort() }).toEqual({ seed, needed: [...wanted].sort() });
    }
  });
});

test('the random days hold gangs, plans accepted in part, and moves of every kind', () => {
  expect(met.plans).toBeGreaterThan(0.9 * DAYS * RIGS.length);
  expect(Math.min(met.gangs, met.parts, ...Object.values(moves))).toBeGreaterThan(5);
});

afterAll(() => {
  const { plans, promises, broken, unproven, better, faults, gangs, parts } = met;
  const tried = `${plans} plans on ${RIGS.length} rigs, ${promises} promises, ${gangs} of them in gangs; ${parts} accepted in part`;
  noteFault('accepted plans', tried, broken);
  if (LONG) {
    const kinds = Object.entries(moves).map(([kind, count]) => `${count} ${kind}`);
    console.log(`accepted plans: ${tried}; ${broken} broken; moves: ${kinds.join(', ')}`);
    console.log(
      `${unproven} not proven, of which ${better} were bettered when asked again; ${faults} days pin a pack twice`,
    );
  }
});
