import { describe, expect, test } from 'vitest';
import type { CastEntry } from '../../../src/callsheet/cast/cast-entry.ts';
import { planCast, recastIn, turnedRound, withPerformersKept } from '../../../src/commands/cast/plan-cast.ts';
import { addCast } from '../../../src/commands/day/describe.ts';
import { castInOrder } from '../../../src/day/cast-in-order.ts';
import { type Speaker, speaker } from '../../day/say.ts';

const entry = (number: string, part: string, person = '', sure = true): CastEntry => ({
  number,
  part,
  person,
  line: 1,
  sure,
});

function withCast(): Speaker {
  const phone = speaker();
  phone.say(
    { kind: 'voice-described', voice: 'ines', fields: { part: 'Ines', person: 'Anna Berg', number: '1' } },
    { kind: 'voice-described', voice: 'dora', fields: { part: 'Dora', number: '2', struck: true } },
    { kind: 'voice-described', voice: 'guard', fields: { part: 'Guard' } },
    { kind: 'voice-described', voice: 'boom', fields: { kind: 'boom', part: 'Boom', number: '3' } },
  );
  return phone;
}
const does = (phone: Speaker, ...entries: CastEntry[]) =>
  planCast(phone.day(), entries).map((one) => `${one.does} ${one.known?.id ?? ''}`.trim());

describe('planning a call sheet', () => {
  test('notices a part with another performer, but not one that is only written another way', () => {
    const asked = (...entries: CastEntry[]) =>
      recastIn(planCast(withCast().day(), entries)).map(({ entry, known }) => [known.part, entry.person]);
    expect(asked(entry('1', 'Ines', 'Mia Lund'), entry('4', 'Radu', 'Jo Ek'))).toEqual([
      ['Ines', 'Mia Lund'],
    ]);
    expect(asked(entry('1', 'Ines', ' ANNA BERG '), entry('1', 'Ines'), entry('', 'guard', 'Bo Ek'))).toEqual(
      [],
    );
  });

  test('keeps the performer of a line where that was said, and takes the rest of it', () => {
    const lines = [{ ...entry('1', 'Inés', 'Mia Lund'), line: 3 }, entry('4', 'Radu', 'Jo Ek')];
    const said = addCast(withCast().day(), withPerformersKept(lines, new Set([3])), () => 'new');
    expect(said.ok && said.value.map((one) => one.kind === 'voice-described' && one.fields)).toEqual([
      { part: 'Inés' },
      { kind: 'performer', number: '4', part: 'Radu', person: 'Jo Ek', priority: expect.any(Number) },
    ]);
  });

  test('tells new ones, those described anew and those that are there already', () => {
    const sheet = [entry('1', 'Ines', 'Anna Berg'), entry('1', 'Inés', 'Anna Berg'), entry('4', 'Radu')];
    expect(does(withCast(), ...sheet)).toEqual(['nothing ines', 'describe ines', 'add']);
  });

  test('takes what the sheet leaves empty as not said', () => {
    expect(does(withCast(), entry('1', 'Ines'))).toEqual(['nothing ines']);
  });

  test('knows somebody without a number by name, and brings back who was struck off', () => {
    expect(does(withCast(), entry('', 'guard'), entry('2', 'Dora'))).toEqual([
      'describe guard',
      'describe dora',
    ]);
  });

  test('never takes a boom for a performer', () => {
    expect(does(withCast(), entry('3', 'Tomas'), entry('', 'Boom'))).toEqual(['add', 'add']);
  });

  test('keeps two parts under one number apart, and says that the number comes twice', () => {
    const phone = withCast();
    phone.say({ kind: 'voice-described', voice: 'twin', fields: { part: 'Ines, young', number: '1' } });
    const sheet = [
      entry('1', 'Ines, young'),
      entry('1', 'Ines'),
      entry('8', 'Jo'),
      entry('', 'Kem'),
      entry('', 'Al'),
    ];
    const planned = planCast(phone.day(), sheet);
    expect(planned.map(({ known }) => known?.id)).toEqual(['twin', 'ines', undefined, undefined, undefined]);
    expect(planned.map(({ twice }) => twice)).toEqual([false, true, false, false, false]);
  });

  test('turns round only what was guessed and has two names', () => {
    const sheet = [entry('1', 'A', 'B', false), entry('2', 'C', 'D'), entry('3', 'E', '', false)];
    expect(turnedRound(sheet).map(({ part, person }) => [part, person])).toEqual([
      ['B', 'A'],
      ['C', 'D'],
      ['E', ''],
    ]);
  });
});

describe('adding a call sheet', () => {
  test('adds in the order of the sheet and doubles nobody when it is pasted again', () => {
    const phone = withCast();
    const sheet = [entry('7', 'Mila', 'Una Falk'), entry('5', 'Radu'), entry('2', 'Dora', 'Lea Holm')];
    let made = 0;
    const add = () =>
      addCast(phone.day(), sheet, () => {
        made += 1;
        return `new${made}`;
      });
    const said = add();
    if (!said.ok) throw new Error(said.problem.code);
    phone.say(...said.value);
    expect(castInOrder(phone.day()).map(({ part }) => part)).toEqual([
      'Mila',
      'Radu',
      'Ines',
      'Dora',
      'Guard',
      'Boom',
    ]);
    expect(phone.day().voices.get('dora')).toMatchObject({ person: 'Lea Holm', struck: false });
    expect(add()).toEqual({ ok: false, problem: { code: 'nothing-changed' } });
    expect(made).toBe(2);
  });

  test('fails on an empty sheet', () => {
    expect(addCast(withCast().day(), [], () => 'x')).toEqual({ ok: false, problem: { code: 'cast-empty' } });
  });
});
