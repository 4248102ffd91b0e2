import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  movedBy,
  nextRank,
  rankVoices,
  reinstateVoice,
  sayWhoIsNeeded,
  strikeVoice,
} from '../../../src/commands/cast/change-cast.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { castInOrder } from '../../../src/day/cast-in-order.ts';
import { type Speaker, speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

function castOnSet(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  return phone;
}
const needs = (phone: Speaker) =>
  Object.fromEntries(answersNow(phone.day()).voices.map(({ voice, need }) => [voice.id, need]));

describe('striking off the cast', () => {
  test('takes packs off and lets leads hang, in one action that brings nobody else down', () => {
    const phone = castOnSet();
    for (const voice of ['ines', 'boom']) {
      const said = strikeVoice(phone.day(), voice);
      if (!said.ok) throw new Error(said.problem.code);
      phone.say(...said.value);
    }
    const { voices, inputs } = answersNow(phone.day());
    expect(voices.map(({ voice }) => voice.id)).toEqual(['dora', 'tomas']);
    expect(inputs.find(({ input }) => input.id === 'in1')?.state).toBe('free');
  });

  test('is refused for somebody on a take, whose line would lose a name', () => {
    const phone = castOnSet();
    phone.say(take('24', 1, 1), take('24', 1, 2));
    expect(strikeVoice(phone.day(), 'ines')).toEqual({
      ok: false,
      problem: { code: 'voice-on-takes', name: 'Ines', take: '24A/1', count: 2 },
    });
    expect(strikeVoice(phone.day(), 'dora').ok).toBe(true);
  });

  test('is undone by bringing back, with nothing on', () => {
    const phone = castOnSet();
    const struck = strikeVoice(phone.day(), 'ines');
    if (struck.ok) phone.say(...struck.value);
    const back = reinstateVoice(phone.day(), 'ines');
    if (back.ok) phone.say(...back.value);
    // The pack that came off when she was struck is told of: it did not come back with her.
    expect(answersNow(phone.day()).voices.find(({ voice }) => voice.id === 'ines')).toMatchObject({
      state: 'unrecorded',
      paths: [{ broken: 'pack-gone' }],
    });
  });

  test('fails for a voice that is not on this day', () => {
    expect(strikeVoice(castOnSet().day(), 'nobody').ok).toBe(false);
    expect(reinstateVoice(castOnSet().day(), 'nobody').ok).toBe(false);
  });
});

describe('who is needed', () => {
  test('says only what differs: needed, or resting for those needed until now', () => {
    const phone = castOnSet();
    phone.say({
      kind: 'voices-needed',
      voices: [
        { voice: 'ines', need: 'needed' },
        { voice: 'tomas', need: 'done' },
      ],
    });
    const wanted = new Map([
      ['ines', false],
      ['dora', true],
      ['tomas', false],
      ['boom', false],
    ]);
    const said = sayWhoIsNeeded(phone.day(), wanted);
    expect(said).toEqual({
      ok: true,
      value: [
        { kind: 'voices-needed', voices: [{ voice: 'dora', need: 'needed' }] },
        { kind: 'voices-needed', voices: [{ voice: 'ines', need: 'resting' }] },
      ],
    });
    if (said.ok) phone.say(...said.value);
    expect(needs(phone)).toEqual({ ines: 'resting', dora: 'needed', tomas: 'done', boom: null });
  });

  test('says nothing where nothing differs', () => {
    const problem = { code: 'nothing-changed' };
    expect(sayWhoIsNeeded(castOnSet().day(), new Map([['ines', false]]))).toEqual({ ok: false, problem });
    expect(sayWhoIsNeeded(castOnSet().day(), new Map())).toEqual({ ok: false, problem });
  });
});

describe('who comes first', () => {
  test('moving keeps everybody, whatever the steps (seed 11)', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.string(), { minLength: 1 }),
        fc.nat(),
        fc.integer(),
        (order, at, steps) => {
          const voice = order[at % order.length]!;
          const moved = movedBy(order, voice, steps);
          expect(moved.toSorted()).toEqual(order.toSorted());
          const to = Math.min(order.length - 1, Math.max(0, order.indexOf(voice) + steps));
          expect(moved.indexOf(voice)).toBe(to);
        },
      ),
      { seed: 11 },
    );
  });

  test('moving somebody who is not there changes nothing', () => {
    expect(movedBy(['a', 'b'], 'c', 1)).toEqual(['a', 'b']);
  });

  test('ranking says only the priorities that change, and the cast stands in that order', () => {
    const phone = castOnSet();
    const said = rankVoices(phone.day(), ['dora', 'ines', 'tomas']);
    expect(said.ok && said.value).toHaveLength(2);
    if (said.ok) phone.say(...said.value);
    expect(castInOrder(phone.day()).map(({ id }) => id)).toEqual(['dora', 'ines', 'tomas', 'boom']);
    expect(rankVoices(phone.day(), ['dora', 'ines', 'tomas']).ok).toBe(false);
    expect(rankVoices(phone.day(), ['nobody']).ok).toBe(false);
  });

  test('somebody new comes after all who have a priority, whatever the booms have', () => {
    const phone = castOnSet();
    phone.say({ kind: 'voice-described', voice: 'boom', fields: { priority: 400 } });
    expect(nextRank(phone.day())).toBe(4);
    phone.say({ kind: 'voice-described', voice: 'last', fields: { part: 'Last', priority: 499 } });
    expect(nextRank(phone.day())).toBe(499);
    expect(nextRank(speaker().day())).toBe(1);
  });
});
