import { describe, expect, test } from 'vitest';
import type { Moment } from '../../../src/commands/command.ts';
import { planShift, type TypedShift } from '../../../src/commands/upkeep/plan-shift.ts';
import type { ShiftFields } from '../../../src/facts/kinds/upkeep-logged.ts';
import { MORNING, type Speaker, speaker, take } from '../../day/say.ts';

const HOUR = 3_600_000;

/** A time of 7 October 2026, two hours east; beyond 24 is the next day. */
const at = (hours: number, minutes = 0): number => MORNING + (hours - 9) * HOUR + minutes * 60_000;
const now = (hours: number, minutes = 0): Moment => ({ atMs: at(hours, minutes), zone: 120 });

function save(phone: Speaker, typed: Partial<TypedShift>, moment: Moment): ShiftFields {
  const said = planShift(phone.day(), { call: '', meal: '', wrap: '', ...typed }, moment);
  if (!said.ok) throw new Error(said.problem.code);
  phone.say(...said.value);
  return phone.day().upkeep.shift;
}

const rolled = (atMs: number) => take('24', 2, 1, { rolledAt: atMs });

describe('hours of the day saved again, late in the day', () => {
  const hours = { call: '06:00', meal: '12:00', wrap: '18:00' };

  test('the wrap put off at 18:20 leaves call and meal today', () => {
    const phone = speaker();
    save(phone, hours, now(5, 50));
    expect(save(phone, { ...hours, wrap: '20:00' }, now(18, 20))).toEqual({
      callAtMs: at(6),
      mealAtMs: at(12),
      wrapAtMs: at(20),
    });
  });

  test('first said at 18:20, the call is the one before the first take', () => {
    const phone = speaker();
    phone.say(rolled(at(7, 10)));
    expect(save(phone, hours, now(18, 20))).toEqual({ callAtMs: at(6), mealAtMs: at(12), wrapAtMs: at(18) });
  });

  test('a first take more than 12 hours after call does not move the call behind it', () => {
    const phone = speaker();
    phone.say(rolled(at(18, 40)));
    expect(save(phone, hours, now(19)).callAtMs).toBe(at(6));
  });

  test('hours that were saved for tomorrow though takes had rolled come back to today', () => {
    const phone = speaker();
    phone.say(rolled(at(7, 10)), {
      kind: 'shift-planned',
      shift: { callAtMs: at(30), mealAtMs: at(36), wrapAtMs: at(42) },
    });
    expect(save(phone, hours, now(18, 30))).toEqual({ callAtMs: at(6), mealAtMs: at(12), wrapAtMs: at(18) });
  });

  test('a night past its midnight keeps the call of the evening before', () => {
    const phone = speaker();
    save(phone, { call: '17:00', wrap: '05:00' }, now(16));
    expect(save(phone, { call: '17:00', wrap: '06:30' }, now(29, 30))).toMatchObject({
      callAtMs: at(17),
      wrapAtMs: at(30, 30),
    });
  });
});

test.each([
  ['06:00', '19:00', 4, 19],
  ['23:30', '00:15', 22, 24.25],
  ['06:00', '05:00', 4, 5],
])('a call of %s that is put to %s stays with its day', (first, then, saidAt, hours) => {
  const phone = speaker();
  save(phone, { call: first }, now(saidAt));
  expect(save(phone, { call: then }, now(saidAt, 30)).callAtMs).toBe(at(hours));
});

describe('without a call', () => {
  test('a meal is before wrap, whenever it is said', () => {
    expect(save(speaker(), { meal: '13:00', wrap: '19:00' }, now(18, 20))).toEqual({
      callAtMs: null,
      mealAtMs: at(13),
      wrapAtMs: at(19),
    });
    expect(save(speaker(), { meal: '13:00', wrap: '19:00' }, now(7))).toMatchObject({
      mealAtMs: at(13),
      wrapAtMs: at(19),
    });
  });

  test('a meal that was put behind wrap comes before it', () => {
    const phone = speaker();
    phone.say({ kind: 'shift-planned', shift: { mealAtMs: at(37), wrapAtMs: at(19) } });
    expect(save(phone, { meal: '13:00', wrap: '19:00' }, now(18, 40)).mealAtMs).toBe(at(13));
  });

  test('a wrap stays where it is when saved again long after it', () => {
    const phone = speaker();
    save(phone, { wrap: '19:00' }, now(12));
    expect(save(phone, { meal: '13:00', wrap: '19:00' }, now(25)).wrapAtMs).toBe(at(19));
  });

  test('a meal alone is the one nearest to now', () => {
    expect(save(speaker(), { meal: '13:00' }, now(14, 30)).mealAtMs).toBe(at(13));
  });
});
