import { expect, test } from 'vitest';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { heardWith, takesWith } from '../../../src/day/answers/heard-with.ts';
import { inputsToOffer } from '../../../src/day/answers/inputs-to-offer.ts';
import { speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';

test('names those on the same track, without those who are muted', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say(
    { kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' },
    { kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' },
    { kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] },
  );
  expect(heardWith(answersNow(phone.day()), 'ines')).toEqual(['dora']);
  expect(heardWith(answersNow(phone.day()), 'tomas')).toEqual([]);
  phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A2', muted: true });
  expect(heardWith(answersNow(phone.day()), 'ines')).toEqual([]);
});

test('lists the takes somebody arrives on, also after the pack went to somebody else', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  const before = phone.id(take('24', 0, 1));
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  const during = phone.id(take('24', 0, 2));
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' });
  phone.say(take('24', 0, 3));
  expect(takesWith(phone.day(), 'ines').map(({ id }) => id)).toEqual([during]);
  expect(takesWith(phone.day(), 'boom')).toHaveLength(3);
  expect(takesWith(phone.day(), 'tomas')).toEqual([]);
  expect(before).not.toBe(during);
});

test('offers a lead the free inputs before the idle ones, and no slot', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, {
    kind: 'rig-laid',
    parts: [
      { part: 'slot1', fields: { type: 'input', name: 'slot 1', inputKind: 'slot', order: 20 } },
      { part: 'line1', fields: { type: 'input', name: 'line 1', inputKind: 'line', order: 21 } },
    ],
  });
  // Nobody is on the boom's input or on the three that packs reach.
  expect(inputsToOffer(answersNow(phone.day())).map(({ input, state }) => `${input.id} ${state}`)).toEqual([
    'in1 free',
    'line1 free',
    'aes1 idle',
    'aes2 idle',
    'aes3 idle',
  ]);
});
