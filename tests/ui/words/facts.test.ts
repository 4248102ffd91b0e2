import { expect, test } from 'vitest';
import { factWords, pinWords } from '../../../src/ui/words/facts.ts';
import { speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { bothRolling } from '../../day/two-recorders.ts';

test('an input is named after its recorder where two have inputs, and alone where one has', () => {
  const both = bothRolling();
  const told = (phone: typeof both) =>
    phone
      .say(
        { kind: 'leads-plugged', leads: [{ lead: 'l1', from: 'near1out', to: 'aes1' }] },
        { kind: 'inputs-sent', routes: [{ input: 'aes1', tracks: ['tr3'] }] },
        { kind: 'mute-set', what: 'input', part: 'aes1', muted: true },
        { kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true },
      )
      .map((fact) => factWords(phone.day(), fact));
  expect(told(both)).toEqual([
    'near 1 into Cart AES 1',
    'Cart AES 1 to track 3',
    'Cart AES 1 muted',
    'A1 muted',
  ]);
  expect(pinWords(both.day(), { input: 'bag-aes1', track: 'bag-tr3' })).toEqual(['Bag AES 1', 'Bag track 3']);
  const one = speaker();
  one.say(...SMALL_RIG, ...SMALL_CAST);
  expect(told(one)).toEqual(['near 1 into AES 1', 'AES 1 to track 3', 'AES 1 muted', 'A1 muted']);
  expect(pinWords(one.day(), { input: 'aes1', track: 'tr3' })).toEqual(['AES 1', 'track 3']);
});

test('a pin is said with its recorder where what it names does not say it', () => {
  const phone = bothRolling();
  const [some, none] = phone.say(
    {
      kind: 'voice-pinned',
      voice: 'ines',
      pins: { channel: 'near1', track: 'bag-tr3', alone: true },
      recorder: 'bag',
    },
    { kind: 'voice-pinned', voice: 'ines', pins: null, recorder: 'bag' },
  );
  expect(factWords(phone.day(), some!)).toBe('Ines pinned: near 1 on Bag, Bag track 3 and alone on Bag');
  expect(factWords(phone.day(), none!)).toBe('Ines not pinned on Bag any more');
});
