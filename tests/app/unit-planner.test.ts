import { expect, test } from 'vitest';
import type { OpenPlanPort, PlanListener } from '../../src/app/planner.ts';
import { type UnitPlanning, unitPlanner } from '../../src/app/unit-planner.ts';
import type { PlanProblem } from '../../src/plan/plan-problem.ts';
import { planNews } from '../../src/plan/setup/plan-news.ts';
import { layingPhone } from '../commands/rig-day.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../day/two-recorders.ts';

const wanted = new Set(['ines', 'dora']);

function stage() {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE);
  const waiting: { number: number; problem: PlanProblem; listener: PlanListener }[] = [];
  const open: OpenPlanPort = (listener) => ({
    ask: (number, { problem }) => void waiting.push({ number, problem, listener }),
    close: () => {},
  });
  const told: UnitPlanning[] = [];
  const asking = unitPlanner([open], (planning) => told.push(planning));
  /** Answers the last question as the worker would. */
  const answer = (): PlanProblem => {
    const { number, problem, listener } = waiting.at(-1)!;
    for (const news of planNews({ what: 'plan', problem })) if (news) listener.hear(number, news);
    return problem;
  };
  return { day: phone.day(), asking, answer, waiting, told };
}

test('the main recorder is planned first, and the backup on what it left', () => {
  const { day, asking, answer, waiting, told } = stage();
  asking.ask(day, { recorders: [CART, BAG], wanted });
  expect(told.at(-1)).toEqual({ plans: [], isLooking: true, trouble: undefined });
  expect(answer().tracks.map(({ id }) => id)).toContain('tr2');
  const backup = answer();
  expect(backup.tracks.map(({ id }) => id)).toEqual(['bag-tr2', 'bag-tr3']);
  expect(waiting).toHaveLength(2);
  // The packs that the plan of the cart puts on them stay on them.
  expect(backup.voices.find(({ id }) => id === 'ines')!.pinnedTransmitter).toBeDefined();
  expect(told.at(-1)).toMatchObject({ isLooking: false, trouble: undefined });
  expect(told.at(-1)!.plans).toHaveLength(2);
});

test('a new question replaces the one before, whose late answers are not shown', () => {
  const { day, asking, answer, waiting, told } = stage();
  asking.ask(day, { recorders: [CART, BAG], wanted });
  const [late] = waiting;
  asking.ask(day, { recorders: [BAG], wanted });
  for (const news of planNews({ what: 'plan', problem: late!.problem }))
    if (news) late!.listener.hear(late!.number, news);
  expect(told.at(-1)).toMatchObject({ plans: [], isLooking: true });
  answer();
  expect(told.at(-1)!.plans).toHaveLength(1);
  expect(told.at(-1)!.isLooking).toBe(false);
});

test('what cannot be planned is said', () => {
  const { day, asking, waiting, told } = stage();
  asking.ask(day, { recorders: [CART], wanted });
  const { number, listener } = waiting[0]!;
  const trouble = { ok: false, problem: { code: 'pinned-twice', transmitter: 'A1' } } as const;
  listener.hear(number, { what: 'full', planned: trouble });
  expect(told.at(-1)).toEqual({ plans: [], isLooking: false, trouble });
});
