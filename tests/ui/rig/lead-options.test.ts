import { expect, test } from 'vitest';
import { inputOptions, leadOptions } from '../../../src/ui/rig/lead-options.ts';
import { speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

function wired() {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l2', from: 'near2out', to: null }] });
  return phone;
}

test('loose ends come first among what can be plugged in, and the rest say where they are', () => {
  expect(
    leadOptions(wired().day(), undefined, undefined).map(({ name, word }) => `${name}: ${word}`),
  ).toEqual(['near 2: no lead', 'Boom: › in 1', 'near 1: › AES 1', 'near 3: › AES 3']);
});

test('what is in can be unplugged, and what is kept for something else is not offered', () => {
  const phone = wired();
  phone.say({ kind: 'part-described', part: 'near3out', fields: { reserved: 'comms' } });
  const options = leadOptions(phone.day(), undefined, 'near1out').map(({ id }) => id);
  expect(options).toEqual(['nothing', 'near2out', 'boom', 'near1out']);
});

test('free inputs come first among where an output can go', () => {
  expect(inputOptions(wired().day(), undefined, false).map(({ name, word }) => `${name}: ${word}`)).toEqual([
    'AES 2: free',
    'in 1: Boom, hardline',
    'AES 1: near 1, A1',
    'AES 3: near 3, A3',
  ]);
});
