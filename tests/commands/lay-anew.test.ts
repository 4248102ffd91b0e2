import { describe, expect, test } from 'vitest';
import { strikeVoice } from '../../src/commands/cast/change-cast.ts';
import { copyRig } from '../../src/commands/day/copy-rig.ts';
import { describePart, describeVoice } from '../../src/commands/day/describe.ts';
import {
  declareGang,
  nameTrack,
  sendInput,
  setMute,
  throwSelectors,
} from '../../src/commands/line/change-chain.ts';
import { bringBack, takeBack } from '../../src/commands/line/correct.ts';
import { markOut, pinVoice, weighMoves } from '../../src/commands/line/plan-ahead.ts';
import { layOn } from '../../src/commands/rig/lay-on.ts';
import { STARTING_RIGS } from '../../src/commands/rig/starting-rigs.ts';
import { reservePart, strikePart, strikeRig } from '../../src/commands/rig/strike-part.ts';
import { putOnSnake } from '../../src/commands/upkeep/describe-runs.ts';
import { describeDevices, freshCells, jamDevices } from '../../src/commands/upkeep/keep-up.ts';
import { describeBand, setFrequencies, switchTransmitters } from '../../src/commands/upkeep/plan-radio.ts';
import { answersNow } from '../../src/day/answers/answers.ts';
import { leadsOf } from '../../src/day/chain/leads.ts';
import { newIds } from '../../src/day/new-ids.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { problemOf } from '../../src/plan/day/day-problem.ts';
import { rangesFor } from '../../src/radio/day/day-ranges.ts';
import { MORNING } from '../day/say.ts';
import { everyAnswer } from './every-answer.ts';
import { type Laying, layingPhone } from './rig-day.ts';

const LATER = MORNING + 5 * 3_600_000;
const MOMENT = { atMs: MORNING + 3_600_000, zone: 120 };

const CAST: Draft[] = ['ines', 'dora', 'tomas'].map((voice, at) => ({
  kind: 'voice-described',
  voice,
  fields: { kind: 'performer', part: voice, priority: at + 1 },
}));

const rigCalled = (name: string) => STARTING_RIGS.find(({ id }) => id === name)!;
const lay = (phone: Laying, name: string): void => phone.run((day) => layOn(day, rigCalled(name).lay()));

function started(): Laying {
  const phone = layingPhone();
  phone.say(...CAST, { kind: 'voices-needed', voices: [{ voice: 'ines', need: 'needed' }] });
  return phone;
}

/** Says of a rig whatever can be said of one, so that each of it would be seen if it outlived the rig. */
function useIt(phone: Laying): void {
  const { rig } = phone.day();
  const ids = (parts: readonly { id: string }[]) => parts.map(({ id }) => id);
  const inputs = ids(rig.inputs);
  const packs = ids(rig.transmitters);
  const isos = ids(rig.tracks.filter(({ mix }) => !mix));
  for (const input of inputs.slice(0, 2)) phone.run((day) => setMute(day, input, true));
  phone.run((day) => setMute(day, packs[0]!, true));
  for (const [at, voice] of ['ines', 'dora'].entries())
    phone.say({ kind: 'transmitter-worn', transmitter: packs[at]!, voice });
  for (const track of isos.slice(0, 3)) phone.run((day) => nameTrack(day, track, `typed ${track}`));
  phone.run((day) =>
    setFrequencies(
      day,
      packs.map((transmitter, at) => ({ transmitter, khz: 606_000 + 400 * at })),
    ),
  );
  phone.run((day) => switchTransmitters(day, packs.slice(0, 3), false));
  for (const part of [inputs[2]!, ids(rig.outputs)[1]!]) phone.run((day) => reservePart(day, part, 'comms'));
  phone.run((day) => describePart(day, inputs[3]!, { name: 'the blue one' }));
  // Two people on one track on purpose, after every selector was thrown.
  if (rig.selectors.length > 0) phone.run((day) => throwSelectors(day, ids(rig.selectors), 'b'));
  const live = answersNow(phone.day()).inputs.filter(({ reach }) =>
    reach.arrival?.sources.some(({ voice }) => voice),
  );
  for (const { input } of live) phone.run((day) => sendInput(day, input.id, [isos[4]!]));
  if (live.length > 1) phone.run((day) => declareGang(day, isos[4]!));
  phone.run((day) =>
    pinVoice(day, 'ines', {
      transmitter: packs[1]!,
      channel: ids(rig.channels)[1]!,
      input: inputs[1]!,
      track: isos[1]!,
      alone: true,
    }),
  );
  phone.run((day) => pinVoice(day, 'dora', { input: inputs[0]! }));
  const leads = [...leadsOf(phone.day().rig, answersNow(phone.day()).links)].map(({ id }) => id);
  const ofBooms = leads.filter((id) => id.startsWith('lead-boom'));
  for (const part of [packs[2]!, inputs[1]!, isos[2]!, ids(rig.channels)[0]!, leads[0]!, ...ofBooms])
    phone.run(() => markOut(part, true));
  phone.run(() => weighMoves({ move: 9, retune: 7 }));
  phone.run((day) => freshCells(day, packs, MOMENT));
  phone.run((day) =>
    describeDevices(day, packs, { runtimeHours: 3, runtimeBasis: 'measured', hasTimecode: true, ppm: 5 }),
  );
  phone.run((day) => jamDevices(day, packs.slice(0, 2), MOMENT));
  phone.run(() => putOnSnake(leads.slice(0, 8), 'old snake', 'analogue'));
  phone.run((day) =>
    describeBand(day, 'where-A-tunes', {
      use: 'tunable',
      fromKhz: 600_000,
      toKhz: 610_000,
      rasterKhz: 100,
      group: 'A',
      spacingKhz: 900,
    }),
  );
}

/** An empty day with the same cast. That somebody is never to be ganged was said of the person, not of the rig. */
function freshFor(used: Laying): Laying {
  const fresh = started();
  const booms = [...used.day().voices.values()].filter(({ kind }) => kind === 'boom');
  for (const { id, ...fields } of booms) fresh.say({ kind: 'voice-described', voice: id, fields });
  fresh.run((day) => pinVoice(day, 'ines', { alone: true }));
  return fresh;
}

const PAIRS = STARTING_RIGS.flatMap((a) => STARTING_RIGS.map((b) => [a.id, b.id] as const));

describe.each([
  ['struck whole', (phone: Laying) => phone.run(strikeRig)],
  [
    'struck part by part',
    (phone: Laying) => {
      for (const part of phone.day().rig.byId.keys())
        if (phone.day().rig.byId.has(part)) phone.run((day) => strikePart(day, part));
    },
  ],
])('a rig %s and another laid', (_, strike) => {
  test.each(PAIRS)('%s, then %s: every answer is that of an empty day', (before, after) => {
    const used = started();
    lay(used, before);
    useIt(used);
    strike(used);
    lay(used, after);

    const fresh = freshFor(used);
    lay(fresh, after);
    expect(everyAnswer(used.day(), LATER)).toEqual(everyAnswer(fresh.day(), LATER));
  });
});

describe('a rig of another day, laid where one was struck', () => {
  test.each(PAIRS)('%s, then that of a day with %s: answers as on an empty day', (before, after) => {
    const other = started();
    lay(other, after);
    useIt(other);
    const used = started();
    lay(used, before);
    useIt(used);
    used.run(strikeRig);
    used.run((day) => copyRig(other.day(), day));

    const fresh = freshFor(used);
    fresh.run((day) => copyRig(other.day(), day));
    expect(everyAnswer(used.day(), LATER)).toEqual(everyAnswer(fresh.day(), LATER));
  });

  test('and laid so time and again, no id is ever given twice', () => {
    const phone = started();
    const given = new Map<string, number>();
    for (let time = 0; time < 4; time += 1) {
      const yesterday = phone.day();
      if (time === 0) lay(phone, 'bag');
      else {
        phone.run(strikeRig);
        phone.run((day) => copyRig(yesterday, day));
      }
      for (const id of phone.day().rig.byId.keys()) given.set(id, (given.get(id) ?? 0) + 1);
    }
    expect(given.size).toBe(4 * phone.day().rig.byId.size);
    expect([...given.values()].every((times) => times === 1)).toBe(true);
  });
});

describe('what a rig brings along', () => {
  test('does not respell a boom of the cast, and one struck off is back with its lead', () => {
    const phone = started();
    lay(phone, 'bag');
    phone.run((day) => describeVoice(day, 'boom1', { part: 'Boom Iva' }));
    phone.run((day) => strikeVoice(day, 'boom2'));
    phone.run(strikeRig);
    lay(phone, 'bag');
    expect(
      answersNow(phone.day())
        .tracks.slice(1, 3)
        .map(({ name }) => name),
    ).toEqual(['Boom Iva', 'Boom 2']);
    expect(answersNow(phone.day()).summary.sources).toBe(2);
  });

  test('leaves a lead of its own to every boom, and no other', () => {
    const phone = started();
    lay(phone, 'bag');
    phone.run(strikeRig);
    lay(phone, 'bag');
    const boom = answersNow(phone.day()).voices.find(({ voice }) => voice.id === 'boom1')!;
    expect(boom.paths.map(({ broken }) => broken)).toEqual([null]);
    phone.run(strikeRig);
    lay(phone, 'cart');
    const after = answersNow(phone.day()).voices.find(({ voice }) => voice.id === 'boom1')!;
    expect([after.state, after.paths.map(({ broken }) => broken)]).toEqual(['off', ['no-lead']]);
  });
});

test('the first rig of a day keeps its plain ids, and what was prepared for it', () => {
  const phone = started();
  const range = { use: 'tunable', fromKhz: 600_000, toKhz: 610_000 } as const;
  phone.run((day) => describeBand(day, 'range', range));
  phone.run(() => weighMoves({ move: 9 }));
  lay(phone, 'bag');
  expect(['tr1', 'mic1', 'near', 'near-ch1', 'tx16'].every((id) => phone.day().rig.byId.has(id))).toBe(true);
  expect(rangesFor(phone.day(), 'A1')).toHaveLength(1);
  expect(problemOf(phone.day(), new Set()).weights.move).toBe(9);
});

test('a rig laid once more after the first was taken back has other ids, and both can stand side by side', () => {
  const phone = started();
  lay(phone, 'modules');
  const laid = phone.facts.filter(({ kind }) => kind === 'rig-laid').map(({ id }) => id);
  phone.run((day) => takeBack(day, laid));
  lay(phone, 'modules');
  const count = phone.day().rig.byId.size;
  phone.run((day) => bringBack(day, laid));
  expect(phone.day().rig.byId.size).toBe(2 * count);
});

describe('an id that is new on a day', () => {
  test('is the one asked for, or the next number behind it', () => {
    const phone = layingPhone();
    phone.say({
      kind: 'rig-laid',
      parts: [
        { part: 'tr1', fields: {} },
        { part: 'tr2.2', fields: {} },
      ],
    });
    const newId = newIds(phone.day());
    expect(['mic1', 'tr1', 'tr1', 'tr2.2', 'tr2'].map(newId)).toEqual([
      'mic1',
      'tr1.2',
      'tr1.3',
      'tr2.3',
      'tr2',
    ]);
    expect(newIds(phone.day())('tr1')).toBe('tr1.2');
  });

  test('is none of a lead, of a mark or of anything else that named one', () => {
    const phone = layingPhone();
    phone.say(
      { kind: 'leads-plugged', leads: [{ lead: 'l1', from: 'o1', to: 'in1' }] },
      { kind: 'out-marked', part: 'dead', out: true },
      { kind: 'cells-changed', devices: ['pack'] },
    );
    const newId = newIds(phone.day());
    for (const id of ['l1', 'o1', 'in1', 'dead', 'pack']) expect(newId(id)).toBe(`${id}.2`);
  });

  test('stays short enough to be read back', () => {
    const phone = layingPhone();
    const long = 'x'.repeat(64);
    phone.say({ kind: 'rig-laid', parts: [{ part: long, fields: {} }] });
    const id = newIds(phone.day())(long);
    phone.run(() => ({ ok: true, value: [{ kind: 'rig-laid', parts: [{ part: id, fields: {} }] }] }));
    expect(phone.day().rig.byId.size).toBe(2);
  });
});
