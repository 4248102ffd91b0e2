import { describe, expect, test } from 'vitest';
import { namePhone } from '../../../src/commands/day/name-phone.ts';
import { actionsOf } from '../../../src/commands/line/undo.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { holdersOf } from '../../../src/day/phones/holders.ts';
import { phonesOfDay } from '../../../src/day/phones/phones-of-day.ts';
import type { Fact } from '../../../src/facts/fact.ts';
import { MORNING, speaker, take } from '../say.ts';

const JON = { kind: 'phone-named', name: 'Jon Berg', job: 'Boom operator' } as const;
const MINUTE = 60_000;

/** Two takes of one phone, then a note of another that had seen the first take only. */
function twoPhones(): Fact[] {
  const mixer = speaker('phonea');
  const [first, second] = [...mixer.say(take('24', 1, 1)), ...mixer.say(take('24', 1, 2))];
  const boom = speaker('phoneb');
  const said = boom.say({ kind: 'note-added', take: first!.id, text: 'rustle' }, JON);
  return [
    first!,
    second!,
    ...said.map((fact) => ({ ...fact, at: MORNING + 30 * MINUTE, seen: { phonea: 1, phonec: 9 } })),
  ];
}

describe('the phones of a day', () => {
  test('are listed with this one first, with who holds each and when it was last heard', () => {
    const phones = phonesOfDay(foldDay('day-1', twoPhones()), 'phonea');
    expect(phones.map(({ database }) => database)).toEqual(['phonea', 'phoneb', 'phonec']);
    expect(phones[1]).toMatchObject({
      holder: { name: 'Jon Berg', job: 'Boom operator' },
      entries: 2,
      last: { at: MORNING + 30 * MINUTE },
    });
    expect(phones[0]!.holder).toBeUndefined();
  });

  test('this one is listed before it wrote anything', () => {
    const [own] = phonesOfDay(foldDay('day-1', twoPhones()), 'phoned');
    expect(own).toMatchObject({ database: 'phoned', entries: 0, last: null, lacks: 0 });
  });

  test('each says what it had not seen of this phone, and whose entries it has that are not here', () => {
    const [own, other] = phonesOfDay(foldDay('day-1', twoPhones()), 'phonea');
    expect(own).toMatchObject({ lacks: 0, hasMoreOf: [] });
    expect(other).toMatchObject({ lacks: 1, hasMoreOf: ['phonec'] });
  });

  test('one of which only others have heard, and one whose later entries they have heard, have what is not here', () => {
    const facts = twoPhones();
    const phones = phonesOfDay(foldDay('day-1', facts), 'phonea');
    expect(phones[2]).toMatchObject({ database: 'phonec', entries: 0, last: null, hasMoreOf: ['phonec'] });
    const utility = { ...facts[2]!, id: '00000a-phonec00000', seen: { phoneb: 7 } } as Fact;
    const more = phonesOfDay(foldDay('day-1', [...facts, utility]), 'phonea');
    const hasMoreOf = (database: string) => more.find((phone) => phone.database === database)?.hasMoreOf;
    expect(hasMoreOf('phoneb')).toEqual(['phoneb']);
    expect(hasMoreOf('phonec')).toEqual(['phoneb']);
  });
});

describe('who holds a phone', () => {
  const phone = speaker('phoneb');
  phone.say(take('24', 1, 1));

  test('is said once, and again when it changes', () => {
    const moment = { atMs: MORNING, zone: 120, database: 'phoneb' };
    const name = (job: string) => namePhone(phone.day(), moment, { name: 'Jon Berg', job });
    expect(name('Boom operator')).toEqual({ ok: true, value: [JON] });
    phone.say(JON);
    expect(name('Boom operator')).toEqual({ ok: true, value: [] });
    expect(name('Utility')).toEqual({ ok: true, value: [{ ...JON, job: 'Utility' }] });
    phone.say({ ...JON, job: 'Utility' });
    expect(holdersOf(phone.day())).toEqual(new Map([['phoneb', { name: 'Jon Berg', job: 'Utility' }]]));
  });

  test('is no step of undo', () => {
    const { done } = actionsOf(phone.day(), 'phoneb');
    expect(done.flatMap(({ facts }) => facts.map(({ kind }) => kind))).toEqual(['take-logged']);
  });
});
