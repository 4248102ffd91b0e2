import { expect, test } from 'vitest';
import type { OpenPlanPort, PlanListener } from '../../src/app/planner.ts';
import { type ProblemAfter, type SetupPlanning, setupPlanner } from '../../src/app/setup-planner.ts';
import { type Setup, setupProblem } from '../../src/plan/day/setup-plans.ts';
import type { PlanProblem } from '../../src/plan/plan-problem.ts';
import { planNews } from '../../src/plan/setup/plan-news.ts';
import { layingPhone } from '../commands/rig-day.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../day/two-recorders.ts';
import { planNextSetup } from '../plan/at-once.ts';

const wanted = new Set(['ines', 'dora']);

function stage() {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE);
  const waiting: { number: number; problem: PlanProblem; listener: PlanListener }[] = [];
  const open: OpenPlanPort = (listener) => ({
    ask: (number, { problem }) => void waiting.push({ number, problem, listener }),
    close: () => {},
  });
  const told: SetupPlanning[] = [];
  const asking = setupPlanner([open], (planning) => told.push(planning));
  /** Answers the last question as the worker would. */
  const answer = (): PlanProblem => {
    const { number, problem, listener } = waiting.at(-1)!;
    for (const news of planNews({ what: 'plan', problem })) if (news) listener.hear(number, news);
    return problem;
  };
  /** Gives a first answer, as where a better one is still sought. */
  const answerFirst = (): void => {
    const { number, problem, listener } = waiting.at(-1)!;
    listener.hear(number, { what: 'first', planned: planNextSetup(problem) });
  };
  const day = phone.day();
  const on =
    (setup: Setup): ProblemAfter =>
    (plans) =>
      setupProblem(day, setup, plans);
  const mainPlan = (setup: Setup) => {
    const planned = planNextSetup(setupProblem(day, setup, [])!);
    if (!planned.ok) throw new Error(planned.problem.code);
    return planned.value;
  };
  return { asking, answer, answerFirst, waiting, told, on, mainPlan };
}

const BOTH: Setup = { recorders: [CART, BAG], wanted };

test('the main recorder is planned first, and the backup on what it left', () => {
  const { asking, answer, waiting, told, on } = stage();
  asking.ask(on(BOTH));
  expect(told.at(-1)).toMatchObject({ plans: [], isLooking: true, trouble: undefined });
  expect(answer().tracks.map(({ id }) => id)).toContain('tr2');
  const backup = answer();
  expect(backup.tracks.map(({ id }) => id)).toEqual(['bag-tr2', 'bag-tr3']);
  expect(waiting).toHaveLength(2);
  // The packs that the plan of the cart puts on them stay on them.
  expect(backup.voices.find(({ id }) => id === 'ines')!.pinnedTransmitter).toBeDefined();
  expect(told.at(-1)).toMatchObject({ isLooking: false, trouble: undefined });
  expect(told.at(-1)!.plans).toHaveLength(2);
});

test('after a plan of the main one that is given only the backup is planned', () => {
  const { asking, answer, waiting, told, on, mainPlan } = stage();
  const main = mainPlan(BOTH);
  asking.ask(on(BOTH), [main]);
  expect(told.at(-1)!.plans).toEqual([main]);
  expect(answer().tracks.map(({ id }) => id)).toEqual(['bag-tr2', 'bag-tr3']);
  expect(waiting).toHaveLength(1);
  expect(told.at(-1)!.plans[0]).toBe(main);
  expect(told.at(-1)).toMatchObject({ plans: { length: 2 }, isLooking: false });
});

test('asked the same again, nothing is worked out twice, nor begun anew where it is being worked out', () => {
  const { asking, answer, answerFirst, waiting, told, on, mainPlan } = stage();
  asking.ask(on(BOTH), [mainPlan(BOTH)]);
  answerFirst();
  const [, first] = told.at(-1)!.plans;
  asking.ask(on(BOTH), [mainPlan(BOTH)]);
  expect(told.at(-1)).toMatchObject({ plans: [{}, first], isLooking: true });
  answer();
  asking.ask(on(BOTH), [mainPlan(BOTH)]);
  expect(told.at(-1)).toMatchObject({ plans: { length: 2 }, isLooking: false });
  expect(waiting).toHaveLength(1);
});

test('a first answer that was begun with stays, and the better one is offered', () => {
  const { asking, answerFirst, waiting, told, on } = stage();
  asking.ask(on({ recorders: [CART], wanted }));
  answerFirst();
  asking.begin();
  const { number, listener } = waiting[0]!;
  const [shown] = told.at(-1)!.plans;
  const better = { ...shown!, moves: shown!.moves.slice(1) };
  listener.hear(number, { what: 'full', planned: { ok: true, value: better } });
  expect(told.at(-1)).toMatchObject({ isLooking: false, better: { at: 0, plan: better } });
  expect(told.at(-1)!.plans).toEqual([shown]);
  asking.showBetter();
  expect(told.at(-1)).toMatchObject({ plans: [better], isLooking: false, better: undefined });
});

test('a new question replaces the one before, whose late answers are not shown', () => {
  const { asking, answer, waiting, told, on } = stage();
  asking.ask(on(BOTH));
  const [late] = waiting;
  asking.ask(on({ recorders: [BAG], wanted }));
  for (const news of planNews({ what: 'plan', problem: late!.problem }))
    if (news) late!.listener.hear(late!.number, news);
  expect(told.at(-1)).toMatchObject({ plans: [], isLooking: true });
  answer();
  expect(told.at(-1)!.plans).toHaveLength(1);
  expect(told.at(-1)!.isLooking).toBe(false);
});

test('what cannot be planned is said, and asked for again', () => {
  const { asking, waiting, told, on } = stage();
  asking.ask(on({ recorders: [CART], wanted }));
  const { number, listener } = waiting[0]!;
  const trouble = { ok: false, problem: { code: 'pinned-twice', transmitter: 'A1' } } as const;
  listener.hear(number, { what: 'full', planned: trouble });
  expect(told.at(-1)).toEqual({ plans: [], isLooking: false, better: undefined, trouble });
  asking.ask(on({ recorders: [CART], wanted }));
  expect(waiting).toHaveLength(2);
  expect(told.at(-1)).toMatchObject({ isLooking: true, trouble: undefined });
});
