import { describe, expect, test } from 'vitest';
import { plugRun, swapLeads } from '../../../src/commands/rig/plug-run.ts';
import { answersAtTake, answersNow } from '../../../src/day/answers/answers.ts';
import { take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { BAG, BAG_BESIDE } from '../../day/two-recorders.ts';
import { type Laying, layingPhone, problemOf } from '../rig-day.ts';

function cartAndBag(): Laying {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE);
  return phone;
}

/** What arrives at each input that something arrives at. */
const arrivals = (phone: Laying, answers = answersNow(phone.day())) =>
  Object.fromEntries(
    answers.inputs.flatMap(({ input, reach }) => (reach.arrival ? [[input.id, reach.arrival.from]] : [])),
  );

const CART_ONLY = { in1: 'boom', aes1: 'near1out', aes2: 'near2out', aes3: 'near3out' };

describe('a lead to a second recorder', () => {
  test('is added to the one at the first, and moves by itself from then on', () => {
    const phone = cartAndBag();
    phone.run((day) => plugRun(day, ['near1out', 'boom'], ['bag-aes1', 'bag-in1']));
    expect(arrivals(phone)).toEqual({ ...CART_ONLY, 'bag-aes1': 'near1out', 'bag-in1': 'boom' });
    phone.run((day) => plugRun(day, ['near1out'], ['aes2']));
    expect(arrivals(phone)).toMatchObject({ aes2: 'near1out', 'bag-aes1': 'near1out' });
    expect(arrivals(phone)).not.toHaveProperty('aes1');
    phone.run((day) => plugRun(day, ['near1out'], ['bag-in1']));
    expect(arrivals(phone)).toMatchObject({ aes2: 'near1out', 'bag-in1': 'near1out' });
    expect(arrivals(phone)).not.toHaveProperty('bag-aes1');
  });

  test('is pulled at the recorder named, and at the main one if none is', () => {
    const phone = cartAndBag();
    phone.run((day) => plugRun(day, ['near1out'], ['bag-aes1']));
    phone.run((day) => plugRun(day, ['near1out'], [null], 'a', { recorder: BAG }));
    expect(arrivals(phone)).toEqual(CART_ONLY);
    phone.run((day) => plugRun(day, ['near1out'], ['bag-aes1']));
    phone.run((day) => plugRun(day, ['near1out'], [null]));
    expect(arrivals(phone)).toMatchObject({ 'bag-aes1': 'near1out' });
    expect(arrivals(phone)).not.toHaveProperty('aes1');
  });

  test('placed before an earlier take is the one that the recorder has later', () => {
    const phone = cartAndBag();
    const first = phone.id(take('1', 0, 1));
    const second = phone.id(take('1', 0, 2));
    phone.run((day) => plugRun(day, ['near1out'], ['bag-aes1'], 'a', { before: second }));
    phone.run((day) => plugRun(day, ['near1out'], ['bag-in1'], 'a', { before: first }));
    expect(arrivals(phone, answersAtTake(phone.day(), first))).toEqual({
      ...CART_ONLY,
      'bag-in1': 'near1out',
    });
    expect(arrivals(phone, answersAtTake(phone.day(), second))).toEqual({
      ...CART_ONLY,
      'bag-aes1': 'near1out',
    });
  });

  test('does not take one that was pulled and that the other recorder gets later', () => {
    const phone = cartAndBag();
    phone.run((day) => plugRun(day, ['near1out'], [null]));
    const first = phone.id(take('1', 0, 1));
    phone.run((day) => plugRun(day, ['near1out'], ['aes1']));
    const second = phone.id(take('1', 0, 2));
    phone.run((day) => plugRun(day, ['near1out'], ['bag-aes1'], 'a', { before: first }));
    expect(arrivals(phone, answersAtTake(phone.day(), first))).toMatchObject({ 'bag-aes1': 'near1out' });
    expect(arrivals(phone, answersAtTake(phone.day(), second))).toEqual({
      ...CART_ONLY,
      'bag-aes1': 'near1out',
    });
  });

  test('goes into one input of a recorder: two at once are refused in words', () => {
    const day = cartAndBag().day();
    expect(problemOf(plugRun(day, ['near1out', 'near1out'], ['aes1', 'aes2']))).toEqual({
      code: 'lead-in-two',
      name: 'near 1',
    });
    expect(problemOf(plugRun(day, ['boom', 'boom'], ['bag-in1', 'bag-aes1']))).toEqual({
      code: 'lead-in-two',
      name: 'Boom',
    });
    expect(problemOf(plugRun(day, ['near1out', 'near1out'], ['aes1', 'bag-aes1']))).toBeNull();
  });

  test('of a hardline changes places with that of another on each recorder that both are in', () => {
    const phone = cartAndBag();
    phone.say({ kind: 'voice-described', voice: 'plant', fields: { kind: 'plant', part: 'Plant' } });
    phone.run((day) => plugRun(day, ['plant', 'plant', 'boom'], ['aes1', 'bag-in1', 'bag-aes1']));
    phone.run((day) => swapLeads(day, 'boom', 'plant'));
    expect(arrivals(phone)).toMatchObject({
      in1: 'plant',
      aes1: 'boom',
      'bag-in1': 'boom',
      'bag-aes1': 'plant',
    });
  });
});
