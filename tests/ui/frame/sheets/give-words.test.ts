import { expect, test } from 'vitest';
import { answersNow } from '../../../../src/day/answers/answers.ts';
import { voicesToOffer } from '../../../../src/day/answers/pack-offers.ts';
import { voiceOfferWords } from '../../../../src/ui/frame/sheets/give-words.ts';
import { speaker } from '../../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../../day/small-rig.ts';

test('beside each name stands why they may get the pack', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
  phone.say({
    kind: 'voices-needed',
    voices: [
      { voice: 'ines', need: 'needed' },
      { voice: 'dora', need: 'needed' },
      { voice: 'tomas', need: 'resting' },
    ],
  });
  const day = phone.day();
  const words = voicesToOffer(answersNow(day), 'A2').map((one) => [
    one.voice.voice.id,
    voiceOfferWords(day, one),
  ]);
  expect(Object.fromEntries(words)).toMatchObject({
    ines: 'needed, A1 is muted',
    dora: 'needed, has no pack',
    tomas: 'not in this setup',
  });
});
