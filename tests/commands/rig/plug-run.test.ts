import { expect, test } from 'vitest';
import { plugRun, swapLeads } from '../../../src/commands/rig/plug-run.ts';
import { answersAtTake, answersNow } from '../../../src/day/answers/answers.ts';
import { swapsFor } from '../../../src/day/answers/inputs-to-offer.ts';
import { take } from '../../day/say.ts';
import { SMALL_RIG } from '../../day/small-rig.ts';
import { layingPhone } from '../rig-day.ts';

test('a hardline plugged in late, before a take at which it was plugged nowhere yet, has no second lead later on', () => {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, { kind: 'voice-described', voice: 'boom', fields: { kind: 'boom', part: 'Boom' } });
  const first = phone.id(take('24', 1, 1));
  phone.say({ kind: 'leads-plugged', leads: [{ lead: 'snake1', from: 'boom', to: 'in1' }] });
  const second = phone.id(take('24', 1, 2));
  phone.run((day) => plugRun(day, ['boom'], ['aes1'], 'a', { before: first }));
  const tracksAt = (id: string) =>
    answersAtTake(phone.day(), id).voices.find(({ voice }) => voice.id === 'boom')!.tracks;
  expect(tracksAt(first)).toEqual(['tr3']);
  expect(tracksAt(second)).toEqual(['tr2']);
});

/** A boom in `in 1` on track 2, and a second one in `AES 1` on track 3. */
function twoBooms() {
  const phone = layingPhone();
  phone.say(
    ...SMALL_RIG,
    { kind: 'voice-described', voice: 'boom', fields: { kind: 'boom', part: 'Boom' } },
    { kind: 'voice-described', voice: 'second', fields: { kind: 'boom', part: 'Second boom' } },
    { kind: 'voice-described', voice: 'plant', fields: { kind: 'plant', part: 'Plant' } },
  );
  phone.run((day) => plugRun(day, ['boom'], ['in1']));
  phone.run((day) => plugRun(day, ['second'], ['aes1']));
  return phone;
}

test('two booms change places in one action: each has the input and the track of the other', () => {
  const phone = twoBooms();
  const first = phone.id(take('24', 1, 1));
  phone.run((day) => swapLeads(day, 'boom', 'second'));
  const tracks = (answers = answersNow(phone.day())) =>
    ['boom', 'second'].map((id) => answers.voices.find(({ voice }) => voice.id === id)!.tracks);
  expect(tracks()).toEqual([['tr3'], ['tr2']]);
  expect(tracks(answersAtTake(phone.day(), first))).toEqual([['tr2'], ['tr3']]);
  phone.run((day) => swapLeads(day, 'boom', 'second', { before: first }));
  expect(tracks(answersAtTake(phone.day(), first))).toEqual([['tr3'], ['tr2']]);
});

test('booms change places at selectors too, and keep the position of each socket', () => {
  const phone = twoBooms();
  phone.say({
    kind: 'part-described',
    part: 'sel',
    fields: { type: 'selector', name: 'sel', input: 'aes1' },
  });
  phone.run((day) => plugRun(day, ['second'], ['aes1'], 'b'));
  phone.say({ kind: 'selectors-thrown', selectors: ['sel'], position: 'b' });
  phone.run((day) => swapLeads(day, 'boom', 'second'));
  const { voices } = answersNow(phone.day());
  expect(voices.find(({ voice }) => voice.id === 'boom')!.tracks).toEqual(['tr3']);
  expect(voices.find(({ voice }) => voice.id === 'second')!.tracks).toEqual(['tr2']);
});

test('a swap is offered among plugged hardlines of a kind, and refused where one hangs free', () => {
  const phone = twoBooms();
  const offered = () => swapsFor(answersNow(phone.day()), 'boom').map(({ voice }) => voice.id);
  phone.run((day) => plugRun(day, ['plant'], ['aes2']));
  expect(offered()).toEqual(['second']);
  phone.run((day) => plugRun(day, ['second'], [null]));
  expect(offered()).toEqual([]);
  expect(swapLeads(phone.day(), 'boom', 'second')).toMatchObject({ ok: false });
});
