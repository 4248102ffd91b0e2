import { describe, expect, test } from 'vitest';
import { type Dice, diceOf } from '../../../sample-days/dice.ts';
import { rollRecorders } from '../../../src/commands/line/roll-recorders.ts';
import { STARTING_RIGS } from '../../../src/commands/rig/starting-rigs.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import type { Day } from '../../../src/day/model.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { stampFacts } from '../../../src/facts/stamp.ts';
import { problemOf } from '../../../src/plan/day/day-problem.ts';
import { recordersPlanned, type Setup, setupFacts, setupProblem } from '../../../src/plan/day/setup-plans.ts';
import type { RecordedVoice } from '../../../src/plan/moves.ts';
import type { PlanProblem } from '../../../src/plan/plan-problem.ts';
import type { Plan } from '../../../src/plan/setup/plan-next-setup.ts';
import { idSource } from '../../../src/shared/ids.ts';
import { LONG } from '../../browser/faults-table.ts';
import { type Laying, layingPhone } from '../../commands/rig-day.ts';
import { randomDay } from '../../day/random-days.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../../day/two-recorders.ts';
import { planNextSetup } from '../at-once.ts';
import { asList, bestOfEveryPlan, fiveOrders } from '../every-plan.ts';
import { brokenPromises } from '../far-end.ts';

const planFor = (problem: PlanProblem): Plan => {
  const planned = planNextSetup(problem);
  if (!planned.ok) throw new Error(planned.problem.code);
  return planned.value;
};

function plansOf(day: Day, setup: Setup): Plan[] {
  const plans: Plan[] = [];
  for (let next = setupProblem(day, setup, plans); next; next = setupProblem(day, setup, plans))
    plans.push(planFor(next));
  return plans;
}

/** A day of its own after more was said, so that the one before can still be read. */
function dayAfter(day: Day, drafts: readonly Draft[]): Day {
  const saying = { day: day.id, at: day.facts.at(-1)!.at + 60_000, zone: 0 };
  const facts = stampFacts(drafts, { ...saying, nextId: idSource('phonez00000', day.facts.length + 1).next });
  return foldDay(day.id, [...day.facts, ...facts]);
}

/** What is worse on a recorder than it was: somebody recorded there otherwise or not at all, and new clashes. */
function worseOn(before: Day, then: Day, recorder: string): string[] {
  const [was, is] = [before, then].map(
    (day) => answersNow(day).recorders.find((one) => one.recorder === recorder)!,
  );
  const clashes = is!.tracks.filter(
    ({ state }, at) => state === 'clash' && was!.tracks[at]!.state !== 'clash',
  );
  const others = was!.voices.filter(({ state, tracks }, at) => {
    const now = is!.voices[at]!;
    return (
      (state === 'alone' || state === 'gang') &&
      (now.state !== state || now.tracks.join(' ') !== tracks.join(' '))
    );
  });
  return [...clashes.map(({ track }) => `clash on ${track.id}`), ...others.map(({ voice }) => voice.id)];
}

/** Who is not on a recorder as its plan promised, alone or in the gang. */
function missedOn(day: Day, recorder: string, promised: readonly RecordedVoice[]): string[] {
  const { voices } = answersNow(day).recorders.find((one) => one.recorder === recorder)!;
  return promised
    .filter(({ voice, track, gangedWith }) => {
      const has = voices.find((one) => one.voice.id === voice)!;
      const isPromised = has.state === 'alone' || (gangedWith.length > 0 && has.state === 'gang');
      return !isPromised || !has.tracks.includes(track);
    })
    .map(({ voice }) => voice);
}

const SECOND_AES: Draft = {
  kind: 'rig-laid',
  parts: [{ part: 'bag-aes2', fields: { type: 'input', name: 'AES 2', inputKind: 'aes3', recorder: BAG } }],
};

test('the next setup says what a rolling backup must be given, after the moves of the main one', () => {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE, {
    kind: 'recorders-rolling',
    recorders: [CART, BAG],
  });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  const setup = { wanted: new Set(['ines', 'dora']) };
  const [main, backup] = plansOf(phone.day(), setup) as [Plan, Plan];
  expect(main.moves.map(({ kind }) => kind)).toEqual(['fit']);
  expect(backup.moves.map(({ kind }) => kind)).toEqual(['replug']);
  expect(backup.recorded.map(({ voice }) => voice)).toEqual(['ines']);
  expect(backup.leftOut.map(({ voice }) => voice)).toEqual(['dora']);
  phone.say(...setupFacts(phone.day(), setup, [main, backup]));
  expect(
    answersNow(phone.day())
      .voices.slice(0, 2)
      .map(({ state, heardOn }) => `${state} ${heardOn}`),
  ).toEqual(['alone main', 'alone main']);
  expect(missedOn(phone.day(), BAG, backup.recorded)).toEqual([]);
  expect(plansOf(phone.day(), setup).flatMap(({ moves }) => moves)).toEqual([]);
});

test('whom only a backup gets is muted where a track of the main one would get them with others', () => {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE, {
    kind: 'recorders-rolling',
    recorders: [CART, BAG],
  });
  phone.say(SECOND_AES, { kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' });
  phone.say({ kind: 'leads-plugged', leads: [{ lead: 'b2', from: 'near2out', to: 'bag-aes1' }] });
  phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] });
  for (const part of ['aes2', 'aes3', 'in1']) phone.say({ kind: 'out-marked', part, out: true });
  const setup = { wanted: new Set(['dora', 'tomas']) };
  const plans = plansOf(phone.day(), setup);
  expect(plans.map(({ recorded }) => recorded.map(({ voice }) => voice))).toEqual([
    ['dora'],
    ['dora', 'tomas'],
  ]);
  phone.say(...setupFacts(phone.day(), setup, plans));
  expect(missedOn(phone.day(), CART, plans[0]!.recorded)).toEqual([]);
  expect(missedOn(phone.day(), BAG, plans[1]!.recorded)).toEqual([]);
  expect(answersNow(phone.day()).links.get('muted:aes2')?.value).toBe(true);
});

/** The small rig with a bag of up to three inputs beside, both rolling, after some minutes of anything. */
function smallDay(dice: Dice): { phone: Laying; setup: Setup } {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE);
  phone.say(SECOND_AES);
  phone.say({ kind: 'recorders-rolling', recorders: [CART, BAG] });
  const voices = ['ines', 'dora', 'tomas', 'boom'];
  const ends = ['near1out', 'near2out', 'near3out', 'boom'];
  const inputs = ['aes1', 'aes2', 'aes3', 'in1', 'bag-aes1', 'bag-aes2', 'bag-in1'];
  const packs = ['A1', 'A2', 'A3'];
  const tracks = ['tr2', 'tr3', 'tr4', 'tr5', 'bag-tr2', 'bag-tr3'];
  const steps: (() => Draft)[] = [
    () => ({ kind: 'transmitter-worn', transmitter: dice.pick(packs), voice: dice.pick(voices.slice(0, 3)) }),
    () => ({
      kind: 'channels-tuned',
      tunings: [{ channel: dice.pick(['near1', 'near2', 'near3']), transmitter: dice.pick(packs) }],
    }),
    () => {
      const [from, to] = [dice.pick(ends), dice.pick(inputs)];
      const lead = `${from} to ${to.startsWith('bag') ? 'bag' : 'cart'}`;
      return { kind: 'leads-plugged', leads: [{ lead, from, to }] };
    },
    () => {
      const input = dice.pick(inputs);
      const own = tracks.filter((track) => track.startsWith('bag') === input.startsWith('bag'));
      return { kind: 'inputs-sent', routes: [{ input, tracks: [dice.pick(own)] }] };
    },
    () => ({
      kind: 'mute-set',
      what: 'transmitter',
      part: dice.pick(packs),
      muted: dice.below(3) > 0,
    }),
    () => ({ kind: 'out-marked', part: dice.pick([...inputs, ...packs]), out: dice.below(2) === 0 }),
  ];
  for (let at = 4 + dice.below(12); at > 0; at -= 1) phone.say(dice.pick(steps)());
  const wanted = new Set(voices.filter(() => dice.below(4) > 0));
  return { phone, setup: { wanted } };
}

describe('small days with a backup, against every possible plan', () => {
  const DAYS = LONG ? 300 : 40;

  test('cost the main recorder in every order what the best plan without a backup costs, and each keeps what it promised', () => {
    const met = { backedUp: 0, leftOut: 0, moves: 0 };
    for (let seed = 1; seed <= DAYS; seed += 1) {
      const { phone, setup } = smallDay(diceOf(seed));
      const day = phone.day();
      const plans = plansOf(day, setup);
      const [main, backup] = plans as [Plan, Plan];
      const alone = problemOf(
        dayAfter(day, [{ kind: 'recorders-rolling', recorders: [CART] }]),
        setup.wanted,
      );
      expect({ seed, cost: fiveOrders(asList(main.cost)) }).toEqual({
        seed,
        cost: fiveOrders(bestOfEveryPlan(alone)),
      });
      expect({ seed, cost: fiveOrders(asList(backup.cost)) }).toEqual({
        seed,
        cost: fiveOrders(bestOfEveryPlan(setupProblem(day, setup, [main])!)),
      });
      const without = dayAfter(day, setupFacts(day, setup, [main]));
      const then = dayAfter(day, setupFacts(day, setup, plans));
      expect({ seed, broken: brokenPromises(day, without, main.recorded) }).toEqual({ seed, broken: [] });
      expect({ seed, worse: worseOn(without, then, CART) }).toEqual({ seed, worse: [] });
      expect({ seed, missed: missedOn(then, BAG, backup.recorded) }).toEqual({ seed, missed: [] });
      expect({ seed, again: plansOf(then, setup).flatMap(({ moves }) => moves) }).toEqual({
        seed,
        again: [],
      });
      met.backedUp += backup.recorded.length;
      met.leftOut += backup.leftOut.length;
      met.moves += backup.moves.length;
    }
    expect(Math.min(...Object.values(met))).toBeGreaterThan(20);
  });
});

describe('days of the ready rigs with a second rig that rolls along', () => {
  const DAYS = LONG ? 40 : 5;

  test.each(STARTING_RIGS.map(({ id }) => id))(
    'beside the rig "%s" the main recorder has what it would have without, and the backup what its plan promised',
    (rig) => {
      for (let seed = 1; seed <= DAYS; seed += 1) {
        const made = randomDay(rig, seed, 8, true, seed % 2 === 0 ? 'rig' : 'recorder').day;
        const all = [CART, made.rig.recorders[0]!.id];
        const rolled = rollRecorders(made, all);
        const day = rolled.ok ? dayAfter(made, rolled.value) : made;
        const dice = diceOf(seed);
        const setup = { wanted: new Set([...day.voices.keys()].filter(() => dice.below(3) > 0)) };
        expect(recordersPlanned(day, setup)).toEqual(all);
        const plans = plansOf(day, setup);
        const [main, backup] = plans as [Plan, Plan];
        const without = dayAfter(day, setupFacts(day, setup, [main]));
        const then = dayAfter(day, setupFacts(day, setup, plans));
        expect({ seed, worse: worseOn(without, then, CART) }).toEqual({ seed, worse: [] });
        expect({ seed, missed: missedOn(then, all[1]!, backup.recorded) }).toEqual({ seed, missed: [] });
      }
    },
  );
});
