import { describe, expect, test } from 'vitest';
import { sendInput } from '../../../src/commands/line/change-chain.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { wordsOfTake } from '../../../src/day/answers/found-on-line.ts';
import { wayOutOfClash } from '../../../src/day/answers/free-track.ts';
import { stretchOf } from '../../../src/day/answers/gang-reach.ts';
import { takesWith } from '../../../src/day/answers/heard-with.ts';
import { packReach } from '../../../src/day/answers/pack-reach.ts';
import { heardTwice } from '../../../src/day/answers/track-answers.ts';
import { trackSince } from '../../../src/day/answers/track-since.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { type Speaker, speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../two-recorders.ts';

const wear = (transmitter: string, voice: string): Draft => ({
  kind: 'transmitter-worn',
  transmitter,
  voice,
});
const plug = (lead: string, from: string, to: string | null): Draft => ({
  kind: 'leads-plugged',
  leads: [{ lead, from, to }],
});
const roll = (...recorders: string[]): Draft => ({ kind: 'recorders-rolling', recorders });

/** Ines on A1 and Dora on A2 by the cart; Ines by a second lead into the bag as well. */
function cartAndBag(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE);
  phone.say(wear('A1', 'ines'), wear('A2', 'dora'), plug('bag-l1', 'near1out', 'bag-aes1'));
  return phone;
}

const voiceOf = (phone: Speaker, id: string) =>
  answersNow(phone.day()).voices.find(({ voice }) => voice.id === id)!;
const onRecorder = (phone: Speaker, id: string) =>
  answersNow(phone.day()).recorders.find(({ recorder }) => recorder === id)!;
const statesOn = (phone: Speaker, id: string) =>
  Object.fromEntries(onRecorder(phone, id).voices.map(({ voice, state }) => [voice.id, state]));
const namesOn = (phone: Speaker, id: string) =>
  Object.fromEntries(onRecorder(phone, id).tracks.map(({ track, name }) => [track.id, name]));

describe('each recorder', () => {
  test('answers for its own inputs and tracks, whether it rolls or not', () => {
    const phone = cartAndBag();
    expect(namesOn(phone, CART)).toEqual({ tr1: '1', tr2: 'Boom', tr3: 'Ines', tr4: 'Dora', tr5: '' });
    expect(namesOn(phone, BAG)).toEqual({ 'bag-tr1': '1', 'bag-tr2': '', 'bag-tr3': 'Ines' });
    expect(onRecorder(phone, BAG).inputs.map(({ input, state }) => [input.id, state])).toEqual([
      ['bag-in1', 'free'],
      ['bag-aes1', 'single'],
    ]);
    expect(onRecorder(phone, BAG).summary).toMatchObject({ tracks: 2, tracksUsed: 1, free: 1 });
    expect(onRecorder(phone, CART).summary).toMatchObject({ tracks: 4, tracksUsed: 3, free: 0 });
    expect(onRecorder(phone, CART).rolls).toBe(true);
    expect(onRecorder(phone, BAG).rolls).toBe(false);
  });

  test('tells of each voice how it has it, and where the chain to it breaks', () => {
    const phone = cartAndBag();
    phone.say({ kind: 'voices-needed', voices: [{ voice: 'boom', need: 'needed' }] });
    expect(statesOn(phone, CART)).toEqual({ ines: 'alone', dora: 'alone', tomas: 'off', boom: 'alone' });
    expect(statesOn(phone, BAG)).toEqual({
      ines: 'alone',
      dora: 'unrecorded',
      tomas: 'off',
      boom: 'unrecorded',
    });
    const dora = onRecorder(phone, BAG).voices.find(({ voice }) => voice.id === 'dora')!;
    expect(dora.paths.map(({ output, broken }) => [output, broken])).toEqual([['near2out', 'no-lead']]);
  });

  test('that has no tracks of its own answers as the first one does', () => {
    const phone = cartAndBag();
    phone.say({ kind: 'part-described', part: 'backup', fields: { type: 'recorder', name: 'Backup' } });
    phone.say(roll(CART, 'backup'));
    const { voices, summary, recorders } = answersNow(phone.day());
    expect(recorders.map(({ recorder }) => recorder)).toEqual([CART, BAG, 'backup']);
    expect(recorders[2]!.tracks).toBe(recorders[0]!.tracks);
    expect(summary).toEqual(recorders[0]!.summary);
    expect(voices).toBe(recorders[0]!.voices);
    expect(voiceOf(phone, 'ines').heardOn).toBe('main');
  });

  test('has its own gangs: one declared never breaks another, on its track or elsewhere', () => {
    const phone = cartAndBag();
    phone.say(wear('A3', 'tomas'));
    phone.say({
      kind: 'inputs-sent',
      routes: ['aes1', 'aes2', 'aes3'].map((input) => ({ input, tracks: ['tr3'] })),
    });
    phone.say(plug('bag-l2', 'near2out', 'bag-in1'));
    phone.say({
      kind: 'inputs-sent',
      routes: ['bag-in1', 'bag-aes1'].map((input) => ({ input, tracks: ['bag-tr3'] })),
    });
    const gang = (track: string, ...sources: string[]): Draft => ({ kind: 'gang-declared', track, sources });
    const stateOf = (track: string) =>
      answersNow(phone.day()).tracks.find((one) => one.track.id === track)!.state;
    phone.say(gang('tr3', 'near1', 'near2', 'near3'));
    expect([stateOf('tr3'), stateOf('bag-tr3')]).toEqual(['gang', 'clash']);
    phone.say(gang('bag-tr3', 'near1', 'near2'));
    expect([stateOf('tr3'), stateOf('bag-tr3')]).toEqual(['gang', 'gang']);
    // A second gang of the track, of others: both hold.
    phone.say(gang('tr3', 'near1', 'boom'));
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'in1', tracks: ['tr4'] }] });
    expect([stateOf('tr3'), stateOf('bag-tr3')]).toEqual(['gang', 'gang']);
    phone.say({
      kind: 'inputs-sent',
      routes: [
        { input: 'in1', tracks: ['tr3'] },
        { input: 'aes2', tracks: ['tr4'] },
        { input: 'aes3', tracks: ['tr5'] },
      ],
    });
    expect([stateOf('tr3'), stateOf('bag-tr3')]).toEqual(['gang', 'gang']);
  });

  test('hears one pack on two of its channels as one voice twice, and never as a clash', () => {
    const phone = cartAndBag();
    phone.say({ kind: 'channels-tuned', tunings: [{ channel: 'near3', transmitter: 'A1' }] });
    phone.say(plug('bag-l3', 'near3out', 'bag-in1'), roll(BAG));
    phone.say({
      kind: 'inputs-sent',
      routes: ['bag-in1', 'bag-aes1'].map((input) => ({ input, tracks: ['bag-tr3'] })),
    });
    const track = onRecorder(phone, BAG).tracks.find(({ track }) => track.id === 'bag-tr3')!;
    expect(track).toMatchObject({ state: 'single', name: 'Ines' });
    expect(heardTwice(track)).toEqual(['ines']);
    expect(answersNow(phone.day()).summary.clashes).toBe(0);
  });

  test('is fed by its own inputs only', () => {
    const phone = cartAndBag();
    const said = sendInput(phone.day(), 'aes2', ['bag-tr2']);
    expect(said.ok || said.problem).toEqual({ code: 'track-elsewhere', input: 'AES 2', track: '2' });
    // As a file, or an input given to the other recorder later, may have it.
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['bag-tr2', 'tr4'] }] });
    expect(namesOn(phone, BAG)['bag-tr2']).toBe('');
    expect(namesOn(phone, CART).tr4).toBe('Dora');
  });
});

describe('the recorders that roll', () => {
  test('the main one says how a voice is recorded, a backup where it does not hear them', () => {
    const phone = cartAndBag();
    phone.say(wear('A3', 'tomas'), plug('l3', 'near3out', 'bag-in1'), roll(CART, BAG));
    expect(answersNow(phone.day()).main.recorder).toBe(CART);
    expect(voiceOf(phone, 'ines')).toMatchObject({
      heardOn: 'main',
      state: 'alone',
      tracks: ['tr3', 'bag-tr3'],
    });
    expect(voiceOf(phone, 'dora')).toMatchObject({ heardOn: 'main', state: 'alone', tracks: ['tr4'] });
    expect(voiceOf(phone, 'tomas')).toMatchObject({ heardOn: 'backup', state: 'alone', tracks: ['bag-tr2'] });
    expect(answersNow(phone.day()).summary.unrecorded).toEqual([]);
    expect(onRecorder(phone, CART).summary.unrecorded).toEqual(['tomas']);
    expect(onRecorder(phone, BAG).summary.unrecorded).toEqual(['dora']);
  });

  test('one that stands by records nobody', () => {
    const phone = cartAndBag();
    phone.say(roll(BAG));
    expect(answersNow(phone.day()).main.recorder).toBe(BAG);
    expect(voiceOf(phone, 'ines')).toMatchObject({ heardOn: 'main', state: 'alone', tracks: ['bag-tr3'] });
    expect(voiceOf(phone, 'dora')).toMatchObject({ heardOn: 'none', state: 'unrecorded', tracks: [] });
    expect(answersNow(phone.day()).summary).toMatchObject({ tracks: 2, free: 1, unrecorded: ['dora'] });
  });

  test('a voice muted on the one and not on the other is recorded; muted on both it is not', () => {
    const phone = cartAndBag();
    phone.say(roll(CART, BAG), { kind: 'mute-set', what: 'input', part: 'aes1', muted: true });
    expect(voiceOf(phone, 'ines')).toMatchObject({ heardOn: 'backup', state: 'alone' });
    phone.say({ kind: 'mute-set', what: 'input', part: 'bag-aes1', muted: true });
    expect(voiceOf(phone, 'ines')).toMatchObject({ heardOn: 'none', state: 'muted' });
    expect(answersNow(phone.day()).summary.muted).toBe(1);
  });

  test('a clash is a problem on a recorder that rolls, and on no other', () => {
    const phone = cartAndBag();
    phone.say(plug('bag-l2', 'near2out', 'bag-in1'));
    phone.say({
      kind: 'inputs-sent',
      routes: ['bag-in1', 'bag-aes1'].map((input) => ({ input, tracks: ['bag-tr3'] })),
    });
    expect(onRecorder(phone, BAG).summary.clashes).toBe(1);
    expect(answersNow(phone.day()).summary.clashes).toBe(0);
    phone.say(roll(CART, BAG));
    expect(answersNow(phone.day()).summary.clashes).toBe(1);
    expect(voiceOf(phone, 'ines').state).toBe('alone');
  });

  test('somebody who shows up only on the backup and leads nowhere there is missed', () => {
    const phone = cartAndBag();
    phone.say(plug('boom', 'boom', null), roll(CART, BAG));
    expect(voiceOf(phone, 'boom').state).toBe('off');
    phone.say(plug('boom2', 'boom', 'bag-in1'), {
      kind: 'inputs-sent',
      routes: [{ input: 'bag-in1', tracks: [] }],
    });
    expect(voiceOf(phone, 'boom')).toMatchObject({ heardOn: 'none', state: 'unrecorded' });
    expect(answersNow(phone.day()).summary.unrecorded).toEqual(['boom']);
  });

  test('the roll is that of the main one', () => {
    const phone = cartAndBag();
    phone.say({ kind: 'roll-changed', roll: 'C1' }, { kind: 'roll-changed', roll: 'B1', recorder: BAG });
    expect(answersNow(phone.day()).roll).toBe('C1');
    phone.say(roll(BAG));
    expect(answersNow(phone.day()).roll).toBe('B1');
  });
});

describe('along the line', () => {
  function moved() {
    const phone = cartAndBag();
    const first = phone.id(take('1', 0, 1));
    phone.say(roll(BAG));
    const second = phone.id(take('1', 0, 2));
    phone.say(roll(CART));
    const third = phone.id(take('1', 0, 3));
    return { phone, first, second, third };
  }

  test('a take has the names and voices of the recorders it is on', () => {
    const { phone, first, second, third } = moved();
    const day = phone.day();
    expect(takesWith(day, 'dora').map(({ id }) => id)).toEqual([first, third]);
    expect(wordsOfTake(day, day.takes.get(second)!)).not.toContain('Dora');
    expect(wordsOfTake(day, day.takes.get(second)!)).toContain('Ines');
  });

  test('a track goes on as it was past takes that it is not on', () => {
    const { phone, first, second, third } = moved();
    expect(trackSince(phone.day(), 'tr4', undefined)?.id).toBe(first);
    expect(trackSince(phone.day(), 'bag-tr3', undefined)?.id).toBe(second);
    const ids = (track: string) => stretchOf(phone.day(), track, first).takes.map(({ id }) => id);
    expect(ids('tr3')).toEqual([first, third]);
    expect(ids('bag-tr3')).toEqual([second]);
  });

  test('what could end a clash, and where a pack goes, stays on the recorder', () => {
    const { phone } = moved();
    phone.say(wear('A3', 'tomas'));
    phone.say({ kind: 'inputs-sent', routes: ['aes2', 'aes3'].map((input) => ({ input, tracks: ['tr4'] })) });
    expect(wayOutOfClash(answersNow(phone.day()), 'tr4')?.to.id).toBe('tr5');
    phone.say(wear('A1', 'tomas'));
    const reach = packReach(phone.day().rig, answersNow(phone.day()));
    expect(reach('A1').tracks.map(({ id }) => id)).toEqual(['tr3']);
  });
});
