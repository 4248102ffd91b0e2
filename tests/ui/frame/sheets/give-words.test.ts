import { expect, test } from 'vitest';
import { answersNow } from '../../../../src/day/answers/answers.ts';
import { packsToOffer, voicesToOffer } from '../../../../src/day/answers/pack-offers.ts';
import { packReach } from '../../../../src/day/answers/pack-reach.ts';
import { packOfferWords, reachWords, voiceOfferWords } from '../../../../src/ui/frame/sheets/give-words.ts';
import { speaker } from '../../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../../day/small-rig.ts';

function wearing() {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  return phone;
}

function wordsForA2(phone: ReturnType<typeof wearing>): Record<string, string> {
  const day = phone.day();
  const answers = answersNow(day);
  const reachOf = packReach(day.rig, answers);
  return Object.fromEntries(
    voicesToOffer(answers, 'A2').map((one) => [one.voice.voice.id, voiceOfferWords(day, one, reachOf)]),
  );
}

test('beside each name stands why they may get the pack', () => {
  const phone = wearing();
  phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
  phone.say({
    kind: 'voices-needed',
    voices: [
      { voice: 'ines', need: 'needed' },
      { voice: 'dora', need: 'needed' },
      { voice: 'tomas', need: 'resting' },
    ],
  });
  expect(wordsForA2(phone)).toMatchObject({
    ines: 'needed, A1 is muted · track 3',
    dora: 'needed, has no pack',
    tomas: 'not in this setup',
  });
});

test('who has a pack is named with its track, and without one where it leads to none', () => {
  const phone = wearing();
  expect(wordsForA2(phone).ines).toBe('has A1 · track 3');
  phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l1', from: 'near1out', to: null }] });
  expect(wordsForA2(phone).ines).toBe('has A1');
});

test('packs are named with their channel and track, worn or not', () => {
  const phone = wearing();
  phone.say({ kind: 'channels-tuned', tunings: [{ channel: 'near3', transmitter: null }] });
  const day = phone.day();
  const answers = answersNow(day);
  const reachOf = packReach(day.rig, answers);
  const words = packsToOffer(day.rig, answers, 'dora').map((offer) => [
    offer.transmitter.name,
    reachWords(day, reachOf(offer.transmitter.id)),
    packOfferWords(day, offer),
  ]);
  expect(words).toEqual([
    ['A2', 'near 2 › track 4', 'on nobody'],
    ['A3', 'no channel tuned to it', 'on nobody'],
    ['A1', 'near 1 › track 3', 'on Ines'],
  ]);
});
