import { expect, test } from 'vitest';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { claimWords } from '../../../src/ui/now/claim-words.ts';
import { mutedWords } from '../../../src/ui/words/chain.ts';
import { speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

function wired() {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  return phone;
}

test('everyone recorded is said only where everyone is, not muted or without their pack', () => {
  const phone = wired();
  const claims = () => claimWords(answersNow(phone.day()));
  expect(claims()).toBe(' · everyone recorded');
  phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
  expect(claims()).toBe(' · no clash');
  phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: false });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' });
  expect(claims()).toBe(' · no clash');
  phone.say({ kind: 'voices-needed', voices: [{ voice: 'ines', need: 'resting' }] });
  expect(claims()).toBe(' · everyone recorded');
});

test('somebody who is muted and not in this setup is no reason to hold back, and not called recorded', () => {
  const phone = wired();
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
  phone.say({ kind: 'voices-needed', voices: [{ voice: 'ines', need: 'resting' }] });
  expect(claimWords(answersNow(phone.day()))).toBe(' · everyone else recorded');
});

test('no clash is said only where none is, on an input that feeds no track neither', () => {
  const phone = wired();
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  phone.say({ kind: 'part-described', part: 'near1out', fields: { carries: ['near1', 'near2'] } });
  phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l2', from: 'near2out', to: null }] });
  phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes1', tracks: [] }] });
  expect(answersNow(phone.day()).tracks.some(({ state }) => state === 'clash')).toBe(false);
  expect(claimWords(answersNow(phone.day()))).toBe('');
});

test('what mutes somebody is named where it is muted: the pack, or the input', () => {
  const phone = wired();
  const words = () => mutedWords(phone.day().rig, answersNow(phone.day()).tracks, 'ines');
  phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
  expect(words()).toBe('A1 muted');
  phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: false });
  phone.say({ kind: 'mute-set', what: 'input', part: 'aes1', muted: true });
  expect(words()).toBe('AES 1 muted');
});
