import { describe, expect, test } from 'vitest';
import { layBeside } from '../../../src/commands/day/lay-beside.ts';
import { backAgain, wayBack } from '../../../src/commands/line/back-again.ts';
import { giveTransmitter, setMute } from '../../../src/commands/line/change-chain.ts';
import { rollRecorders } from '../../../src/commands/line/roll-recorders.ts';
import { undo } from '../../../src/commands/line/undo.ts';
import { layRecorder } from '../../../src/commands/rig/lay-rig.ts';
import { plugRun } from '../../../src/commands/rig/plug-run.ts';
import { answersAtTake, answersNow } from '../../../src/day/answers/answers.ts';
import type { Day } from '../../../src/day/model.ts';
import { rollingAtTake, rollingNow } from '../../../src/day/recorders/rolling.ts';
import { type Setup, setupBesides, setupFacts, setupProblem } from '../../../src/plan/day/setup-plans.ts';
import type { Move } from '../../../src/plan/moves.ts';
import type { Plan } from '../../../src/plan/setup/plan-next-setup.ts';
import { type Laying, laidRig, problemOf } from '../../commands/rig-day.ts';
import { take } from '../../day/say.ts';
import { CART } from '../../day/two-recorders.ts';
import { planNextSetup } from '../at-once.ts';

const VOICES = ['v1', 'v2', 'v3', 'v4', 'v5', 'v6'];

/** A cart with a box far away whose selectors are thrown to it, a bag on the network beside, and six on the box's packs. */
function cartAndBag(count = 8): Laying {
  const phone = laidRig('cart');
  phone.say({
    kind: 'selectors-thrown',
    selectors: phone.day().rig.selectors.map(({ id }) => id),
    position: 'b',
  });
  const inputs = [
    { kind: 'network', count },
    { kind: 'mic', count: 2 },
  ] as const;
  phone.run((day) => layBeside(day, layRecorder({ tracks: 16, inputs }), { name: 'Bag' }));
  const packs = phone.day().rig.transmitters.filter(({ name }) => name.startsWith('B'));
  for (const [at, voice] of VOICES.entries()) {
    phone.say({ kind: 'voice-described', voice, fields: { part: `Part ${at + 1}`, priority: at + 1 } });
    phone.run((day) => giveTransmitter(day, packs[at]!.id, voice));
  }
  phone.say({ kind: 'voices-needed', voices: VOICES.map((voice) => ({ voice, need: 'needed' })) });
  return phone;
}

const bagOf = (day: Day): string => day.rig.recorders[0]!.id;

function plansOf(day: Day, move: Setup): Plan[] {
  const plans: Plan[] = [];
  for (let next = setupProblem(day, move, plans); next; next = setupProblem(day, move, plans)) {
    const plan = planNextSetup(next);
    if (!plan.ok) throw new Error(plan.problem.code);
    plans.push(plan.value);
  }
  return plans;
}

function moveTo(phone: Laying, ...recorders: string[]): { plans: Plan[]; move: Setup } {
  const move = { recorders, wanted: new Set(VOICES) };
  const plans = plansOf(phone.day(), move);
  phone.say(...setupFacts(phone.day(), move, plans));
  return { plans, move };
}

const kinds = (moves: readonly Move[]): string[] => [...new Set(moves.map(({ kind }) => kind))];
const statesOf = (day: Day) => answersNow(day).voices.map(({ state, heardOn }) => `${state} ${heardOn}`);
const namesOn = (day: Day, recorder: string) =>
  answersNow(day)
    .recorders.find((one) => one.recorder === recorder)!
    .tracks.map(({ name, state }) => `${name} ${state}`);

describe('moving the unit', () => {
  test('takes a plug for each voice, leaves the cart as it is, and is one action', () => {
    const phone = cartAndBag();
    const before = phone.day();
    const cart = namesOn(before, CART);
    expect(statesOf(before)).toEqual(VOICES.map(() => 'alone main'));
    const { plans } = moveTo(phone, bagOf(before));
    expect(plans).toHaveLength(1);
    expect(plans[0]!.moves).toHaveLength(6);
    expect(kinds(plans[0]!.moves)).toEqual(['replug']);
    expect(statesOf(phone.day())).toEqual(VOICES.map(() => 'alone main'));
    expect(rollingNow(phone.day()).map(({ name }) => name)).toEqual(['Bag']);
    expect(namesOn(phone.day(), CART)).toEqual(cart);
    expect(answersNow(phone.day()).summary).toMatchObject({ clashes: 0, unrecorded: [] });
    phone.run((day) => undo(day, 'phonea'));
    expect(answersNow(phone.day())).toEqual(answersNow(before));
  });

  test('plugs the leads in reading order, and none crosswise', () => {
    const phone = cartAndBag();
    const day = phone.day();
    const { plans } = moveTo(phone, CART, bagOf(day));
    const names = plans[1]!.moves.map((move) =>
      move.kind === 'replug'
        ? [move.source, move.input].map((id) => day.rig.byId.get(id)!.name)
        : [move.kind],
    );
    expect(names).toEqual(VOICES.map((_voice, at) => [`far box ${at + 1}`, `net ${at + 1}`]));
  });

  test('asked again has nothing left to do', () => {
    const phone = cartAndBag();
    moveTo(phone, bagOf(phone.day()));
    const move = { recorders: [bagOf(phone.day())], wanted: new Set(VOICES) };
    expect(plansOf(phone.day(), move)[0]!.moves).toEqual([]);
    expect(setupBesides(phone.day(), move, plansOf(phone.day(), move))[0]!.besides).toEqual([]);
  });

  test('with a backup plans the main one first, and takes nothing from it', () => {
    const phone = cartAndBag(3);
    // Nobody is on the box's own channels any more: the cart has to be tuned and plugged as well.
    const packs = phone.day().rig.transmitters.filter(({ name }) => name.startsWith('A'));
    for (const [at, voice] of VOICES.entries()) {
      const worn = phone.day().rig.transmitters.filter(({ name }) => name === `B${at + 1}`);
      phone.run((day) => giveTransmitter(day, worn[0]!.id, null));
      phone.run((day) => giveTransmitter(day, packs[at]!.id, voice));
    }
    const { plans } = moveTo(phone, CART, bagOf(phone.day()));
    expect(plans.map(({ recorded }) => recorded.length)).toEqual([6, 5]);
    // The bag has three inputs for the network and two for the cart's own channels.
    expect(plans[1]!.recorded.map(({ voice }) => voice).sort()).toEqual(VOICES.slice(0, 5));
    expect(plans[1]!.moves.filter(({ kind }) => kind === 'take' || kind === 'fit')).toEqual([]);
    // Everybody is on the cart as its plan promised, the most important ones on the bag as well.
    expect(statesOf(phone.day())).toEqual(VOICES.map(() => 'alone main'));
    const bag = answersNow(phone.day()).recorders[1]!;
    expect(bag.voices.filter(({ state }) => state === 'alone').map(({ voice }) => voice.id)).toEqual(
      VOICES.slice(0, 5),
    );
    expect(answersNow(phone.day()).summary).toMatchObject({ clashes: 0, muted: 0 });
  });

  test('with a backup that has the tracks of the main one plans once', () => {
    const phone = cartAndBag();
    phone.say({ kind: 'part-described', part: 'backup', fields: { type: 'recorder', name: 'Backup' } });
    expect(moveTo(phone, CART, 'backup').plans).toHaveLength(1);
    expect(rollingNow(phone.day()).map(({ name }) => name)).toEqual(['Recorder', 'Backup']);
  });

  test('can be placed before an earlier take', () => {
    const phone = cartAndBag();
    const first = phone.id(take('1', 0, 1));
    const second = phone.id(take('1', 0, 2));
    const move = { recorders: [bagOf(phone.day())], wanted: new Set(VOICES), before: second };
    phone.say(...setupFacts(phone.day(), move, plansOf(phone.day(), move)));
    expect(rollingAtTake(phone.day(), first).map(({ name }) => name)).toEqual(['Recorder']);
    expect(rollingAtTake(phone.day(), second).map(({ name }) => name)).toEqual(['Bag']);
    const on = (id: string) => answersAtTake(phone.day(), id).voices.map(({ state }) => state);
    expect([on(first), on(second)]).toEqual([VOICES.map(() => 'alone'), VOICES.map(() => 'alone')]);
  });

  test('placed inside another one holds until the other goes on', () => {
    const phone = cartAndBag();
    moveTo(phone, bagOf(phone.day()));
    const [first, second] = [1, 2].map((number) => phone.id(take('1', 0, number))) as [string, string];
    phone.run(backAgain);
    const third = phone.id(take('1', 0, 3));
    const move = { recorders: [CART], wanted: new Set(VOICES), before: second };
    phone.say(...setupFacts(phone.day(), move, plansOf(phone.day(), move)));
    const on = [first, second, third].map((id) => rollingAtTake(phone.day(), id)[0]!.name);
    expect(on).toEqual(['Bag', 'Recorder', 'Recorder']);
    for (const id of [first, second, third])
      expect(answersAtTake(phone.day(), id).summary).toMatchObject({ clashes: 0, unrecorded: [] });
  });
});

describe('back again', () => {
  test('is what stood before: the same recorder, and every lead where it was', () => {
    const phone = cartAndBag();
    const before = answersNow(phone.day());
    moveTo(phone, bagOf(phone.day()));
    phone.say(take('1', 0, 1));
    expect(wayBack(phone.day())).toMatchObject({ recorders: [CART] });
    expect(wayBack(phone.day())!.moves).toHaveLength(6);
    phone.run(backAgain);
    const after = answersNow(phone.day());
    expect(rollingNow(phone.day()).map(({ name }) => name)).toEqual(['Recorder']);
    expect(after.summary).toEqual(before.summary);
    for (const at of [0, 1]) {
      const reached = (answers: typeof after) =>
        answers.recorders[at]!.inputs.map(({ input, reach }) => [
          input.id,
          reach.arrival?.from,
          reach.tracks,
        ]);
      expect(reached(after)).toEqual(reached(before));
    }
    phone.run((day) => undo(day, 'phonea'));
    expect(rollingNow(phone.day()).map(({ name }) => name)).toEqual(['Bag']);
    expect(answersNow(phone.day()).summary.unrecorded).toEqual([]);
  });

  test('leaves what was changed since as it is', () => {
    const phone = cartAndBag();
    moveTo(phone, bagOf(phone.day()));
    const bag = answersNow(phone.day()).recorders[1]!;
    const [one, other] = bag.inputs.filter(({ reach }) => reach.arrival) as [
      (typeof bag.inputs)[0],
      (typeof bag.inputs)[0],
    ];
    const free = bag.inputs.find(({ state }) => state === 'free')!.input.id;
    phone.run((day) => plugRun(day, [one.reach.arrival!.from], [free]));
    phone.run((day) => setMute(day, other.input.id, true));
    expect(wayBack(phone.day())!.moves).toHaveLength(5);
    phone.run(backAgain);
    const after = answersNow(phone.day()).recorders[1]!;
    const at = (id: string) => after.inputs.find(({ input }) => input.id === id)!.reach;
    expect(at(free).arrival?.from).toBe(one.reach.arrival!.from);
    expect(at(other.input.id)).toMatchObject({ arrival: null, muted: true });
  });

  test('puts back a lead that was pushed out, and a pack on who wore it, unless they have another', () => {
    const phone = cartAndBag();
    const [first, second] = phone.day().rig.transmitters.map(({ id }) => id) as [string, string];
    phone.say({ kind: 'voice-described', voice: 'x', fields: { part: 'X' } });
    phone.run((day) => giveTransmitter(day, first, 'x'));
    const bag = bagOf(phone.day());
    const inputs = answersNow(phone.day()).recorders[1]!.inputs.map(({ input }) => input.id);
    phone.run((day) => plugRun(day, ['box-out12'], [inputs[0]!]));
    // A move as another phone may have put it: over a lead that was there.
    const box = phone.day().rig.outputs.find(({ name }) => name === 'far box 11')!.id;
    phone.say(
      { kind: 'recorders-rolling', recorders: [bag] },
      { kind: 'leads-plugged', leads: [{ lead: 'new', from: box, to: inputs[0]! }] },
      { kind: 'transmitter-worn', transmitter: first, voice: 'v1' },
      { kind: 'mute-set', what: 'transmitter', part: second, muted: true },
    );
    phone.run(backAgain);
    const { recorders, links } = answersNow(phone.day());
    expect(recorders[1]!.inputs[0]!.reach.arrival?.from).toBe('box-out12');
    expect(links.get(`worn:${first}`)?.value).toBe('x');
    expect(links.get(`muted:${second}`)?.value).toBe(false);
    // Out again, and X gets another pack meanwhile: this one stays where it is.
    phone.say(
      { kind: 'recorders-rolling', recorders: [bag] },
      { kind: 'transmitter-worn', transmitter: first, voice: 'v1' },
    );
    phone.run((day) => giveTransmitter(day, second, 'x'));
    phone.run(backAgain);
    expect(answersNow(phone.day()).links.get(`worn:${first}`)?.value).toBe('v1');
  });

  test('is refused where the unit has not moved; a backup that was corrected is no move', () => {
    const phone = cartAndBag();
    expect(problemOf(backAgain(phone.day()))).toEqual({ code: 'unit-not-moved' });
    phone.run((day) => rollRecorders(day, [CART, bagOf(day)]));
    expect(wayBack(phone.day())).toBeNull();
  });
});
