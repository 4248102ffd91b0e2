import { describe, expect, test } from 'vitest';
import { diceOf } from '../../sample-days/dice.ts';
import { loadSample } from '../../sample-days/load.ts';
import type { CommandResult } from '../../src/commands/command.ts';
import { carryOver } from '../../src/commands/day/start-day.ts';
import { declareGang, dissolveGang } from '../../src/commands/line/change-chain.ts';
import { resolveConflict } from '../../src/commands/line/resolve-conflict.ts';
import { answersAtTake, answersNow } from '../../src/day/answers/answers.ts';
import { clashesWithoutGang, stretchOf } from '../../src/day/answers/gang-reach.ts';
import { gangName, gangsOn } from '../../src/day/chain/gang-links.ts';
import { saidOfLink } from '../../src/day/chain/said-of-link.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day, TakeId } from '../../src/day/model.ts';
import { conflictsOf } from '../../src/day/phones/conflicts.ts';
import { takeText } from '../../src/day/slate.ts';
import { takesInOrder } from '../../src/day/takes.ts';
import { batchOf } from '../../src/facts/kinds/envelope.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';
import { MORNING, type Speaker, speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';

/** The day after a command; throws where it fails. */
function dayAfter(day: Day, said: CommandResult): Day {
  if (!said.ok) throw new Error(said.problem.code);
  const ids = idSource('phonezwin01');
  for (const { id } of day.facts) ids.see(id);
  const seen = Object.fromEntries(day.highest);
  const facts = stampFacts(said.value, { day: day.id, at: day.lastAt, zone: 60, seen, nextId: ids.next });
  return foldDay(day.id, [...day.facts, ...facts]);
}

const stateAt = (day: Day, at: TakeId, track: string): string =>
  answersAtTake(day, at).tracks.find((answer) => answer.track.id === track)!.state;

/** How every take's track is used, by the name of the take. */
const statesOf = (day: Day, track: string): Record<string, string> =>
  Object.fromEntries(takesInOrder(day).map((one) => [takeText(one), stateAt(day, one.id, track)]));

const takeNamed = (day: Day, name: string): TakeId =>
  takesInOrder(day).find((one) => takeText(one) === name)!.id;

test('settling a clash on one take of the sample day leaves every later take ganged that was', () => {
  const day = loadSample('full');
  const before = statesOf(day, 'tr16');
  expect(Object.entries(before).filter(([, state]) => state === 'clash')).toEqual([['44/1', 'clash']]);
  const settled = dayAfter(day, declareGang(day, 'tr16', { before: takeNamed(day, '44/1') }));
  expect(statesOf(settled, 'tr16')).toEqual({ ...before, '44/1': 'gang' });
});

/** A phone with three performers, each on a track of their own. */
function wired(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  for (const [pack, voice] of [
    ['A1', 'ines'],
    ['A2', 'dora'],
    ['A3', 'tomas'],
  ] as const)
    phone.say({ kind: 'transmitter-worn', transmitter: pack, voice });
  return phone;
}

const send = (phone: Speaker, input: string, track: string): void => {
  phone.say({ kind: 'inputs-sent', routes: [{ input, tracks: [track] }] });
};

/** Takes 24/1 to 24/5: Dora joins Ines on track 3 for three of them, on the fourth she is off it, on the fifth back. */
function fiveTakes(): Speaker {
  const phone = wired();
  send(phone, 'aes2', 'tr3');
  for (const number of [1, 2, 3]) phone.say(take('24', 0, number));
  send(phone, 'aes2', 'tr4');
  phone.say(take('24', 0, 4));
  send(phone, 'aes2', 'tr3');
  phone.say(take('24', 0, 5));
  return phone;
}

const states = (...each: readonly string[]): Record<string, string> =>
  Object.fromEntries(each.map((state, at) => [`24/${at + 1}`, state]));

describe('a gang declared before a take of the past', () => {
  test('holds from there as long as the track stays as it is there', () => {
    const day = fiveTakes().day();
    expect(statesOf(day, 'tr3')).toEqual(states('clash', 'clash', 'clash', 'single', 'clash'));
    const settled = dayAfter(day, declareGang(day, 'tr3', { before: takeNamed(day, '24/2') }));
    expect(statesOf(settled, 'tr3')).toEqual(states('clash', 'gang', 'gang', 'single', 'clash'));
    expect(answersNow(settled).summary).toMatchObject({ gangs: 0, clashes: 1 });
  });

  test('holds onwards where it is told to', () => {
    const day = fiveTakes().day();
    const settled = dayAfter(day, declareGang(day, 'tr3', { before: takeNamed(day, '24/2'), onwards: true }));
    expect(statesOf(settled, 'tr3')).toEqual(states('clash', 'gang', 'gang', 'single', 'gang'));
    expect(answersNow(settled).summary).toMatchObject({ gangs: 1, clashes: 0 });
  });

  test('goes on to now where the track is so still', () => {
    const day = fiveTakes().day();
    const said = declareGang(day, 'tr3', { before: takeNamed(day, '24/5') });
    expect(said.ok && said.value.map(({ kind }) => kind)).toEqual(['gang-declared']);
    expect(answersNow(dayAfter(day, said)).summary).toMatchObject({ gangs: 1, clashes: 0 });
  });

  test('ends after the last take where the track has changed since, and does not begin again by itself', () => {
    const phone = fiveTakes();
    phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'tomas' });
    const day = phone.day();
    const settled = dayAfter(day, declareGang(day, 'tr3', { before: takeNamed(day, '24/5') }));
    expect(statesOf(settled, 'tr3')).toEqual(states('clash', 'clash', 'clash', 'single', 'gang'));
    expect(answersNow(settled).summary).toMatchObject({ gangs: 0, clashes: 1 });
  });

  test('takes nothing from the same gang declared later: it begins earlier', () => {
    const phone = fiveTakes();
    phone.say({
      kind: 'gang-declared',
      track: 'tr3',
      sources: ['near1', 'near2'],
      before: takeNamed(phone.day(), '24/3'),
    });
    const day = phone.day();
    expect(statesOf(day, 'tr3')).toEqual(states('clash', 'clash', 'gang', 'single', 'gang'));
    const settled = dayAfter(day, declareGang(day, 'tr3', { before: takeNamed(day, '24/1') }));
    expect(statesOf(settled, 'tr3')).toEqual(states('gang', 'gang', 'gang', 'single', 'gang'));
  });

  test('does not reach past an end that was said', () => {
    const phone = fiveTakes();
    phone.say({
      kind: 'gang-declared',
      track: 'tr3',
      sources: [],
      before: takeNamed(phone.day(), '24/3'),
    });
    const day = phone.day();
    for (const onwards of [false, true]) {
      const settled = dayAfter(day, declareGang(day, 'tr3', { before: takeNamed(day, '24/1'), onwards }));
      expect(statesOf(settled, 'tr3')).toEqual(states('gang', 'gang', 'clash', 'single', 'clash'));
    }
    expect(stretchOf(day, 'tr3', takeNamed(day, '24/1')).takes).toHaveLength(2);
  });

  test('is one action: undo takes it back whole', () => {
    const day = fiveTakes().day();
    const said = declareGang(day, 'tr3', { before: takeNamed(day, '24/1') });
    const settled = dayAfter(day, said);
    const batch = settled.facts.slice(-2).map(batchOf);
    expect(batch[0]).toBe(batch[1]);
  });
});

describe('several gangs of a track', () => {
  test('hold beside each other, and nobody shares who was in none together', () => {
    const phone = wired();
    const gang = (...sources: string[]) => phone.say({ kind: 'gang-declared', track: 'tr3', sources });
    gang('near1', 'near2');
    gang('near3', 'near1');
    const now = () => answersNow(phone.day()).tracks.find(({ track }) => track.id === 'tr3')!.state;
    send(phone, 'aes2', 'tr3');
    expect(now()).toBe('gang');
    send(phone, 'aes3', 'tr3');
    // Each may be with Ines; nobody said that all three may.
    expect(now()).toBe('clash');
    send(phone, 'aes2', 'tr4');
    expect(now()).toBe('gang');
  });

  test('end together by one word, and one of them by its own', () => {
    const phone = wired();
    phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
    phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near3'] });
    send(phone, 'aes2', 'tr3');
    phone.say(take('24', 0, 1));
    phone.say({ kind: 'gang-ended', track: 'tr3', sources: ['near3', 'near1'] });
    phone.say(take('24', 0, 2));
    send(phone, 'aes2', 'tr4');
    send(phone, 'aes3', 'tr3');
    phone.say(take('24', 0, 3));
    expect(statesOf(phone.day(), 'tr3')).toEqual(states('gang', 'gang', 'clash'));
    const day = phone.day();
    const ended = dayAfter(day, dissolveGang(day, 'tr3', { before: takeNamed(day, '24/2') }));
    expect(statesOf(ended, 'tr3')).toEqual(states('gang', 'clash', 'clash'));
  });

  test('declared on two phones that did not know of each other both hold, and contradict nothing', () => {
    const [a, b] = [speaker('phonea'), speaker('phoneb', MORNING + 1000)];
    a.say(...SMALL_RIG, ...SMALL_CAST);
    const common = [...a.facts];
    a.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
    b.say({ kind: 'gang-declared', track: 'tr3', sources: ['near2', 'near3'] });
    const merged = foldDay('day-1', [...common, ...a.facts.slice(common.length), ...b.facts]);
    expect(gangsOn(merged.tail, 'tr3')).toHaveLength(2);
    expect(conflictsOf(merged)).toEqual([]);
  });

  test('ended on one phone and declared on another contradict each other, and either word settles that gang alone', () => {
    const a = speaker('phonea');
    a.say(...SMALL_RIG, ...SMALL_CAST);
    a.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near3'] });
    const [declared] = a.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
    const b = speaker('phoneb', MORNING + 3_600_000);
    // What a phone says comes after as many words of another's as it has said itself.
    for (let at = 0; at < a.facts.length; at += 1) b.say({ kind: 'roll-changed', roll: 'R1' });
    const [ended] = b.say({ kind: 'gang-declared', track: 'tr3', sources: [] });
    const day = foldDay('day-1', [...a.facts, ...b.facts]);
    const link = gangName('tr3', ['near1', 'near2']);
    expect(conflictsOf(day).map((one) => one.kind === 'link-conflict' && one.link)).toContain(link);
    expect(saidOfLink(ended!, link)).toEqual({
      kind: 'gang-ended',
      track: 'tr3',
      sources: ['near1', 'near2'],
    });
    const among = [ended!.id, declared!.id];
    for (const stands of among) {
      const after = dayAfter(day, resolveConflict(day, link, among, stands));
      const links = conflictsOf(after).map((one) => one.kind === 'link-conflict' && one.link);
      expect(links).toEqual([gangName('tr3', ['near1', 'near3'])]);
      expect(gangsOn(after.tail, 'tr3').some(({ sources }) => sources.includes('near2'))).toBe(
        stands === declared!.id,
      );
    }
  });

  test('go over to the next day', () => {
    const phone = wired();
    phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
    phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near3'] });
    const tomorrow = speaker('phoneb');
    const carried = carryOver(phone.day(), { atMs: MORNING, zone: 120 });
    if (carried.ok) tomorrow.say(...carried.value);
    const gangs = gangsOn(tomorrow.day().tail, 'tr3').map(({ sources }) => sources);
    expect(gangs).toEqual([
      ['near1', 'near2'],
      ['near1', 'near3'],
    ]);
  });
});

describe('what is shown before the tap is what happens (seeds 1 to 60)', () => {
  const TRACKS = ['tr3', 'tr4'];
  const SOURCES = ['near1', 'near2', 'near3', 'boom'];

  /** Takes, and whatever makes and ends gangs and clashes between them, a third of it placed before an earlier take. */
  function randomDay(seed: number): Speaker {
    const dice = diceOf(seed);
    const phone = wired();
    const takes: TakeId[] = [];
    const late = () => (takes.length > 0 && dice.next() < 0.33 ? { before: dice.pick(takes) } : {});
    const some = () => SOURCES.filter(() => dice.next() < 0.6);
    for (let said = 0; said < 30; said += 1) {
      const track = dice.pick(TRACKS);
      const what = dice.below(6);
      if (what < 2) takes.push(phone.id(take('24', 0, takes.length + 1)));
      else if (what < 4) {
        const input = dice.pick(['in1', 'aes1', 'aes2', 'aes3']);
        phone.say({ kind: 'inputs-sent', routes: [{ input, tracks: [track] }], ...late() });
      } else if (what === 4) phone.say({ kind: 'gang-declared', track, sources: some(), ...late() });
      else if (dice.next() < 0.5)
        phone.say({ kind: 'gang-ended', track, sources: [...some(), 'boom'], ...late() });
      else phone.say({ kind: 'mute-set', what: 'input', part: 'aes2', muted: dice.next() < 0.5, ...late() });
    }
    return phone;
  }

  /** Every take and track of random days that is used like this: places where somebody could tap. */
  function* taps(state: string) {
    for (let seed = 1; seed <= 60; seed += 1) {
      const phone = randomDay(seed);
      const day = phone.day();
      for (const { id: before } of takesInOrder(day))
        for (const track of TRACKS) if (stateAt(day, before, track) === state) yield { day, track, before };
    }
  }

  const changed = (day: Day, then: Day, track: string): string[] =>
    takesInOrder(day)
      .filter(({ id }) => stateAt(day, id, track) !== stateAt(then, id, track))
      .map(({ id }) => `${id} ${stateAt(day, id, track)} ${stateAt(then, id, track)}`);
  const settles = (takes: readonly { readonly id: TakeId }[]) => takes.map(({ id }) => `${id} clash gang`);

  test('for a clash settled there only, and onwards: no take that was ganged clashes', () => {
    let tried = 0;
    let more = 0;
    for (const { day, track, before } of taps('clash')) {
      const { takes, alike } = stretchOf(day, track, before);
      const there = dayAfter(day, declareGang(day, track, { before }));
      expect(changed(day, there, track)).toEqual(settles(takes));
      const onwards = dayAfter(day, declareGang(day, track, { before, onwards: true }));
      expect(changed(day, onwards, track)).toEqual(settles([...takes, ...alike]));
      tried += 1;
      more += alike.length;
    }
    expect(tried).toBeGreaterThan(100);
    expect(more).toBeGreaterThan(20);
  });

  test('for gangs that are ended', () => {
    let tried = 0;
    for (const { day, track, before } of taps('gang')) {
      const takes = clashesWithoutGang(day, track, before);
      const ended = dayAfter(day, dissolveGang(day, track, { before }));
      expect(changed(day, ended, track)).toEqual(takes.map(({ id }) => `${id} gang clash`));
      tried += 1;
    }
    expect(tried).toBeGreaterThan(20);
  });
});
