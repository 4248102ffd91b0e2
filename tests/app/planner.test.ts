import { describe, expect, test } from 'vitest';
import {
  NOTHING_PLANNED,
  type OpenPlanPort,
  type PlanListener,
  type Planning,
  planner,
} from '../../src/app/planner.ts';
import type { Move } from '../../src/plan/moves.ts';
import { PLAIN_WEIGHTS, type PlanProblem } from '../../src/plan/plan-problem.ts';
import type { PlanAsked } from '../../src/plan/setup/plan-news.ts';
import type { Plan } from '../../src/plan/setup/plan-next-setup.ts';
import { ok } from '../../src/shared/result.ts';

const voice = (id: string, needed: boolean) => ({ id, priority: 0, needed, done: false });

/** A question of its own each time. Ben is not needed in it. */
const question = (): PlanProblem => ({
  voices: [voice('Ada', true), voice('Ben', false)],
  transmitters: [],
  channels: [],
  selectors: [],
  paths: [],
  inputs: [],
  tracks: [],
  weights: PLAIN_WEIGHTS,
});

const NO_COST = { leftOut: [0], ganged: [0], packs: 0, bench: 0, newTracks: 0, extras: 0 };

/** A plan that fits these packs on Ada. */
const fitting = (...packs: string[]): Plan => ({
  moves: packs.map(
    (transmitter): Move => ({
      kind: 'fit',
      transmitter,
      to: 'Ada',
      because: { code: 'has-no-pack', voice: 'Ada' },
    }),
  ),
  recorded: [],
  leftOut: [],
  cost: NO_COST,
  bound: NO_COST,
  exact: { leftOut: true, ganged: true, packs: true, bench: true, newTracks: true },
  effort: packs.length,
});

/** A port that notes what it is asked, and says what the test has it say. */
function fakePort() {
  const questions: { number: number; asked: PlanAsked }[] = [];
  let listener: PlanListener | undefined;
  let isClosed = false;
  const open: OpenPlanPort = (given) => {
    listener = given;
    return {
      ask: (number, asked) => void questions.push({ number, asked }),
      close: () => {
        isClosed = true;
      },
    };
  };
  return {
    open,
    questions,
    isOpened: () => listener !== undefined,
    isClosed: () => isClosed,
    fail: () => listener!.failed(),
    /** News of the last question, or of one before. */
    say: (news: Parameters<PlanListener['hear']>[1], number = questions.at(-1)!.number) =>
      listener!.hear(number, news),
  };
}

function stage(...more: OpenPlanPort[]) {
  const port = fakePort();
  let planning: Planning = NOTHING_PLANNED;
  const asking = planner([port.open, ...more], (now) => {
    planning = now;
  });
  return { port, asking, now: () => planning };
}

const first = fitting('A1', 'A2');
const full = fitting('A1');
const firstNews = { what: 'first', planned: ok(first) } as const;
const fullNews = { what: 'full', planned: ok(full) } as const;
const noAddition = { what: 'addition', addition: undefined } as const;

describe('a plan asked for', () => {
  test('is the first answer at once, and the better one when it comes', () => {
    const { port, asking, now } = stage();
    const problem = question();
    asking.ask(problem);
    expect(now()).toEqual(NOTHING_PLANNED);
    port.say(firstNews);
    expect(now()).toMatchObject({ problem, planned: ok(first), isLooking: true });
    port.say(fullNews);
    expect(now()).toMatchObject({ planned: ok(full), isLooking: false, better: undefined });
    port.say({ what: 'addition', addition: { kind: 'track', voices: ['Ada'] } });
    expect(now().addition).toEqual({ kind: 'track', voices: ['Ada'] });
    asking.ask(question());
    port.say(fullNews);
    expect(now().addition).toBeUndefined();
    port.say(noAddition);
    expect(now().addition).toBe('none');
  });

  test('begun with, stays as it is, and the better one is held for a tap', () => {
    const { port, asking, now } = stage();
    asking.ask(question());
    port.say(firstNews);
    asking.begin();
    port.say(fullNews);
    expect(now()).toMatchObject({ planned: ok(first), better: full, isLooking: false });
    asking.showBetter();
    expect(now()).toMatchObject({ planned: ok(full), better: undefined });
  });

  test('begun with and then proven, is proven in its place', () => {
    const { port, asking, now } = stage();
    asking.ask(question());
    port.say(firstNews);
    asking.begin();
    const proven = { ...fitting('A1', 'A2'), effort: 99 };
    port.say({ what: 'full', planned: ok(proven) });
    expect(now()).toMatchObject({ planned: ok(proven), better: undefined });
  });

  test('begun with before its own answer is there, is not begun with', () => {
    const { port, asking, now } = stage();
    asking.ask(question());
    port.say(firstNews);
    asking.begin();
    asking.ask(question());
    asking.begin();
    port.say(firstNews);
    port.say(fullNews);
    expect(now()).toMatchObject({ planned: ok(full), better: undefined });
  });
});

describe('a question that another one follows', () => {
  test('is not answered any more, and until the next answer the plan is known to be an old one', () => {
    const { port, asking, now } = stage();
    const [one, two] = [question(), question()];
    asking.ask(one);
    port.say(firstNews);
    asking.ask(two);
    const [before] = port.questions;
    port.say(fullNews, before!.number);
    expect(now()).toMatchObject({ planned: ok(first) });
    expect(now().problem).toBe(one);
    port.say(fullNews);
    expect(now()).toMatchObject({ planned: ok(full) });
    expect(now().problem).toBe(two);
  });

  test('takes a better plan with it that was held', () => {
    const { port, asking, now } = stage();
    asking.ask(question());
    port.say(firstNews);
    asking.begin();
    port.say(fullNews);
    asking.ask(question());
    port.say(firstNews);
    expect(now()).toMatchObject({ planned: ok(first), better: undefined, isLooking: true });
  });
});

describe('a worker', () => {
  const noWorker: OpenPlanPort = () => {
    throw new Error('no workers here');
  };

  test('that cannot start leaves the work to the page', () => {
    const page = fakePort();
    const problem = question();
    const asking = planner([noWorker, page.open], () => {});
    asking.ask(problem);
    expect(page.questions.map(({ asked }) => asked)).toEqual([{ what: 'plan', problem }]);
  });

  test('that fails is ended, and its question and those after it go to the page', () => {
    const page = fakePort();
    const { port, asking, now } = stage(page.open);
    const [one, two] = [question(), question()];
    asking.ask(one);
    expect(page.isOpened()).toBe(false);
    port.fail();
    expect(port.isClosed()).toBe(true);
    port.say(firstNews);
    expect(now().planned).toBeUndefined();
    page.say(firstNews);
    expect(now().planned).toEqual(ok(first));
    asking.ask(two);
    expect(page.questions.map(({ asked }) => asked.problem)).toEqual([one, two]);
    expect(port.questions).toHaveLength(1);
  });

  test('and a page that both fail say so', () => {
    const page = fakePort();
    const { port, asking, now } = stage(page.open);
    const problem = question();
    asking.ask(problem);
    port.fail();
    page.fail();
    expect(now()).toMatchObject({ problem, planned: { ok: false, problem: { code: 'plan-failed' } } });
  });

  test('is ended with the screen', () => {
    const { port, asking } = stage();
    asking.ask(question());
    asking.close();
    expect(port.isClosed()).toBe(true);
  });
});

describe('what if', () => {
  const answer = {
    plan: full,
    isRecorded: true,
    moreMoves: [],
    fewerMoves: [],
    pushedOut: [],
    pushedIntoGang: [],
  };

  test('is asked when the plan is there in full, and compares with that', () => {
    const { port, asking, now } = stage();
    const problem = question();
    asking.ask(problem);
    port.say(firstNews);
    asking.askWhatIf('Ben');
    port.say(fullNews);
    expect(port.questions).toHaveLength(1);
    expect(now().whatIf).toEqual({ voice: 'Ben', answer: undefined, isLooking: true });
    port.say(noAddition);
    expect(port.questions.at(-1)!.asked).toEqual({ what: 'what-if', problem, voice: 'Ben', now: full });
    port.say({ what: 'what-if', voice: 'Ben', answer });
    expect(now().whatIf).toEqual({ voice: 'Ben', answer, isLooking: false });
  });

  test('is asked anew with the next question, and an answer to the one before does not count', () => {
    const { port, asking, now } = stage();
    asking.ask(question());
    port.say(fullNews);
    port.say(noAddition);
    asking.askWhatIf('Ben');
    const { number } = port.questions.at(-1)!;
    const next = question();
    asking.ask(next);
    port.say({ what: 'what-if', voice: 'Ben', answer }, number);
    port.say(fullNews);
    port.say(noAddition);
    expect(now().whatIf).toEqual({ voice: 'Ben', answer: undefined, isLooking: true });
    expect(port.questions.at(-1)!.asked).toMatchObject({ what: 'what-if', problem: next });
  });

  test('is not asked of somebody who is needed, nor where there is no plan', () => {
    const { port, asking, now } = stage();
    asking.ask(question());
    port.say(fullNews);
    port.say(noAddition);
    asking.askWhatIf('Ada');
    expect(port.questions).toHaveLength(1);
    expect(now().whatIf?.isLooking).toBe(false);
    asking.ask(question());
    port.say({ what: 'full', planned: { ok: false, problem: { code: 'plan-too-large', voices: 99 } } });
    port.say(noAddition);
    asking.askWhatIf('Ben');
    expect(port.questions).toHaveLength(2);
    expect(now().whatIf?.isLooking).toBe(false);
  });
});
