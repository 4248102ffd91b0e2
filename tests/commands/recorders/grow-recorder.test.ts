import { expect, test } from 'vitest';
import { describePart } from '../../../src/commands/day/describe.ts';
import { addInputs, addSend, addTracks, unfedTracks } from '../../../src/commands/rig/grow-rig.ts';
import { ownPartsOf } from '../../../src/day/recorders/recorder-parts.ts';
import { SMALL_RIG } from '../../day/small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../../day/two-recorders.ts';
import { layingPhone, problemOf } from '../rig-day.ts';

function cartAndBag() {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, ...BAG_BESIDE);
  const named = (recorder: string, list: 'inputs' | 'tracks' | 'sends') =>
    ownPartsOf(phone.day().rig, recorder)[list].map(({ name }) => name);
  return { phone, named };
}

test('inputs, tracks and sends added to a recorder are numbered on from its own, and feed its own tracks', () => {
  const { phone, named } = cartAndBag();
  phone.run((day) => addTracks(day, 2, phone.newId, BAG));
  phone.run((day) => addInputs(day, 'aes3', 3, phone.newId, BAG));
  phone.run((day) => addSend(day, 'timecode', 'timecode', phone.newId, BAG));
  expect(named(BAG, 'tracks')).toEqual(['1', '2', '3', '4', '5']);
  expect(named(BAG, 'inputs')).toEqual(['in 1', 'AES 1', 'AES 2', 'AES 3', 'AES 4']);
  expect(named(BAG, 'sends')).toEqual(['comms', 'timecode']);
  expect(named(CART, 'inputs')).toEqual(['in 1', 'AES 1', 'AES 2', 'AES 3']);
  // The last of the three inputs found no track; the cart's were not taken for it.
  expect(unfedTracks(phone.day(), BAG)).toEqual([]);
  phone.run((day) => addTracks(day, 1, phone.newId));
  expect(named(CART, 'tracks')).toEqual(['1', '2', '3', '4', '5', '6']);
});

test('two recorders may each have an input of one name; one recorder may not', () => {
  const { phone, named } = cartAndBag();
  phone.run((day) => describePart(day, 'bag-aes1', { name: 'AES 2' }));
  expect(named(BAG, 'inputs')).toEqual(['in 1', 'AES 2']);
  expect(problemOf(describePart(phone.day(), 'bag-aes1', { name: 'in 1' }))?.code).toBe('name-taken');
  expect(problemOf(addSend(phone.day(), 'comms', 'comms', phone.newId, BAG))?.code).toBe('name-taken');
  expect(problemOf(addSend(phone.day(), 'comms', 'comms', phone.newId))).toBeNull();
});

test('nothing is added to a recorder that is not there', () => {
  const { phone } = cartAndBag();
  for (const said of [
    addInputs(phone.day(), 'mic', 1, phone.newId, 'gone'),
    addTracks(phone.day(), 1, phone.newId, 'gone'),
    addSend(phone.day(), 'comms', null, phone.newId, 'gone'),
  ])
    expect(problemOf(said)).toMatchObject({ code: 'not-on-this-day', what: 'recorder' });
});
