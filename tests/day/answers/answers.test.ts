import { describe, expect, test } from 'vitest';
import { answersAtTake, answersNow } from '../../../src/day/answers/answers.ts';
import { heardTwice } from '../../../src/day/answers/track-answers.ts';
import type { Day } from '../../../src/day/model.ts';
import { speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';

const wired = () => {
  const phone = speaker();
  phone.say(...SMALL_RIG);
  phone.say(...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  return phone;
};

const track = (day: Day, id: string) => answersNow(day).tracks.find((one) => one.track.id === id)!;
const input = (day: Day, id: string) => answersNow(day).inputs.find((one) => one.input.id === id)!;
const voice = (day: Day, id: string) => answersNow(day).voices.find((one) => one.voice.id === id)!;

describe('a track', () => {
  test('is named after whoever wears the pack whose channel arrives there', () => {
    const phone = wired();
    expect(track(phone.day(), 'tr3')).toMatchObject({ state: 'single', name: 'Ines' });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas' });
    expect(track(phone.day(), 'tr3')).toMatchObject({ state: 'single', name: 'Tomas' });
    expect(voice(phone.day(), 'ines')).toMatchObject({ state: 'unrecorded', tracks: [] });
  });

  test('names two performers of one name both, and one that comes by two ways once', () => {
    const phone = wired();
    phone.say({ kind: 'voice-described', voice: 'dora', fields: { part: 'Ines' } });
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] });
    expect(track(phone.day(), 'tr3').name).toBe('Ines, Ines');
    phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'ines' });
    expect(track(phone.day(), 'tr3').name).toBe('Ines');
  });

  test('clashes when two are heard on it and nobody said why, and gangs when somebody did', () => {
    const phone = wired();
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] });
    expect(track(phone.day(), 'tr3')).toMatchObject({ state: 'clash', name: 'Ines, Dora' });
    expect(input(phone.day(), 'aes1').state).toBe('clash');
    expect(answersNow(phone.day()).summary).toMatchObject({ clashes: 1, gangs: 0, tracksUsed: 2 });
    phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
    expect(track(phone.day(), 'tr3').state).toBe('gang');
    expect(voice(phone.day(), 'dora').state).toBe('gang');
    phone.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'tomas' });
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes3', tracks: ['tr3'] }] });
    expect(track(phone.day(), 'tr3').state).toBe('clash');
  });

  test('does not clash with itself where one pack comes by two channels, and says that it is twice', () => {
    const phone = wired();
    phone.say({ kind: 'channels-tuned', tunings: [{ channel: 'near3', transmitter: 'A1' }] });
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes3', tracks: ['tr3'] }] });
    expect(track(phone.day(), 'tr3')).toMatchObject({ state: 'single', name: 'Ines' });
    expect(heardTwice(track(phone.day(), 'tr3'))).toEqual(['ines']);
    expect(voice(phone.day(), 'ines').state).toBe('alone');
    expect(input(phone.day(), 'aes3').state).toBe('single');
    expect(answersNow(phone.day()).summary).toMatchObject({ clashes: 0, gangs: 0 });
    phone.say({ kind: 'mute-set', what: 'input', part: 'aes3', muted: true });
    expect(heardTwice(track(phone.day(), 'tr3'))).toEqual([]);
  });

  test('twice on a track and beside somebody else clashes, until that is on purpose', () => {
    const phone = wired();
    phone.say({ kind: 'channels-tuned', tunings: [{ channel: 'near3', transmitter: 'A1' }] });
    phone.say({
      kind: 'inputs-sent',
      routes: [
        { input: 'aes2', tracks: ['tr3'] },
        { input: 'aes3', tracks: ['tr3'] },
      ],
    });
    expect(track(phone.day(), 'tr3').state).toBe('clash');
    // Whoever is in the gang is in it by whichever of her channels.
    phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
    expect(track(phone.day(), 'tr3')).toMatchObject({ state: 'gang', name: 'Ines, Dora' });
  });

  test('is no clash while all but one are muted', () => {
    const phone = wired();
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] });
    phone.say({ kind: 'mute-set', what: 'input', part: 'aes2', muted: true });
    expect(track(phone.day(), 'tr3').state).toBe('single');
    expect(voice(phone.day(), 'dora').state).toBe('muted');
    phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
    expect(track(phone.day(), 'tr3').state).toBe('muted');
  });

  test('keeps a name typed by hand and says that it was typed', () => {
    const phone = wired();
    phone.say({ kind: 'track-named', track: 'tr3', name: 'Door' });
    expect(track(phone.day(), 'tr3')).toMatchObject({ name: 'Door', typed: true });
    phone.say({ kind: 'track-named', track: 'tr3', name: null });
    expect(track(phone.day(), 'tr3')).toMatchObject({ name: 'Ines', typed: false });
  });
});

describe('an input', () => {
  test('is free when nothing reaches it and idle when nobody is on what does', () => {
    const phone = wired();
    expect(input(phone.day(), 'aes3').state).toBe('idle');
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l3', from: 'near3out', to: null }] });
    expect(input(phone.day(), 'aes3').state).toBe('free');
  });

  test('clashes when its lead brings two live channels, even if it feeds no track', () => {
    const phone = wired();
    phone.say({ kind: 'part-described', part: 'near1out', fields: { carries: ['near1', 'near2'] } });
    expect(input(phone.day(), 'aes1').state).toBe('clash');
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes1', tracks: [] }] });
    expect(input(phone.day(), 'aes1').state).toBe('clash');
    expect(answersNow(phone.day()).summary.clashes).toBe(1);
  });

  test('is never offered to a voice when what reaches it is kept for timecode', () => {
    const phone = wired();
    phone.say({ kind: 'part-described', part: 'near3out', fields: { reserved: 'timecode' } });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'tomas' });
    expect(input(phone.day(), 'aes3').state).toBe('reserved');
    expect(voice(phone.day(), 'tomas')).toMatchObject({ state: 'unrecorded' });
  });
});

describe('a chain', () => {
  const breakOf = (day: Day, id: string) => voice(day, id).paths.map(({ broken }) => broken);

  test('is named where it breaks, link by link', () => {
    const phone = wired();
    phone.say({ kind: 'voices-needed', voices: [{ voice: 'tomas', need: 'needed' }] });
    expect(voice(phone.day(), 'tomas').state).toBe('unrecorded');
    expect(breakOf(phone.day(), 'tomas')).toEqual(['no-transmitter']);
    phone.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'tomas' });
    expect(breakOf(phone.day(), 'tomas')).toEqual([null]);
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes3', tracks: [] }] });
    expect(breakOf(phone.day(), 'tomas')).toEqual(['no-track']);
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l3', from: 'near3out', to: null }] });
    expect(breakOf(phone.day(), 'tomas')).toEqual(['lead-hangs']);
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l3', from: null, to: null }] });
    expect(breakOf(phone.day(), 'tomas')).toEqual(['no-lead']);
    phone.say({ kind: 'part-described', part: 'near3out', fields: { carries: [] } });
    expect(breakOf(phone.day(), 'tomas')).toEqual(['no-output']);
    phone.say({ kind: 'channels-tuned', tunings: [{ channel: 'near3', transmitter: null }] });
    expect(breakOf(phone.day(), 'tomas')).toEqual(['no-channel']);
  });

  test('is pushed out when another lead takes its socket', () => {
    const phone = wired();
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l2', from: 'near2out', to: 'aes1' }] });
    expect(breakOf(phone.day(), 'ines')).toEqual(['pushed-out']);
    expect(track(phone.day(), 'tr3').name).toBe('Dora');
  });

  test('is switched away by a selector, and only that one input changes', () => {
    const phone = wired();
    phone.say(
      {
        kind: 'part-described',
        part: 'sel1',
        fields: { type: 'selector', name: 'selector 1', input: 'aes1' },
      },
      {
        kind: 'leads-plugged',
        leads: [{ lead: 'l3', from: 'near3out', to: 'aes1', position: 'b' }],
      },
      { kind: 'transmitter-worn', transmitter: 'A3', voice: 'tomas' },
    );
    const before = answersNow(phone.day());
    phone.say({ kind: 'selectors-thrown', selectors: ['sel1'], position: 'b' });
    const after = answersNow(phone.day());
    const changed = after.tracks.filter(({ name }, at) => name !== before.tracks[at]!.name);
    expect(changed.map(({ track: { id }, name }) => [id, name])).toEqual([['tr3', 'Tomas']]);
    expect(breakOf(phone.day(), 'ines')).toEqual(['switched-away']);
  });

  test('gives for every answer the facts behind it', () => {
    const phone = wired();
    const worn = phone.id({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas' });
    expect(track(phone.day(), 'tr3').because).toContain(worn);
    expect(voice(phone.day(), 'tomas').paths[0]!.because).toContain(worn);
  });
});

describe('a voice on two tracks', () => {
  /** Ines on tracks 3 and 4, with Dora or Tomas beside her on some of them. */
  const besideInes = (routes: { aes2?: string[]; aes3?: string[] }) => {
    const phone = wired();
    phone.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'tomas' });
    const { aes2 = ['tr5'], aes3 = ['tr5'] } = routes;
    phone.say({
      kind: 'inputs-sent',
      routes: [
        { input: 'aes1', tracks: ['tr3', 'tr4'] },
        { input: 'aes2', tracks: aes2 },
        { input: 'aes3', tracks: aes3 },
      ],
    });
    return phone;
  };
  const states = (day: Day) =>
    ['ines', 'tr3', 'tr4'].map((id) => (id === 'ines' ? voice : track)(day, id).state);

  test('is alone where one of them is hers, whichever it is', () => {
    expect(states(besideInes({ aes2: ['tr4'] }).day())).toEqual(['alone', 'single', 'clash']);
    expect(states(besideInes({ aes2: ['tr3'] }).day())).toEqual(['alone', 'clash', 'single']);
    const ganged = besideInes({ aes2: ['tr3'] });
    ganged.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
    expect(states(ganged.day())).toEqual(['alone', 'gang', 'single']);
  });

  test('is ganged rather than clashing, whichever track comes first', () => {
    for (const [gang, clash] of [
      ['tr3', 'tr4'],
      ['tr4', 'tr3'],
    ] as const) {
      const phone = besideInes({ aes2: [gang], aes3: [clash] });
      phone.say({ kind: 'gang-declared', track: gang, sources: ['near1', 'near2'] });
      expect([track(phone.day(), gang).state, track(phone.day(), clash).state]).toEqual(['gang', 'clash']);
      expect(voice(phone.day(), 'ines')).toMatchObject({ state: 'gang', tracks: ['tr3', 'tr4'] });
      expect(voice(phone.day(), 'tomas').state).toBe('clash');
    }
  });
});

describe('a late correction', () => {
  test('repairs every take from its place on the line, and none before', () => {
    const phone = wired();
    const takes = [1, 2, 3].map((number) => phone.id(take('24', 1, number)));
    const nameAt = (day: Day, id: string) => answersAtTake(day, id).tracks[2]!.name;
    expect(takes.map((id) => nameAt(phone.day(), id))).toEqual(['Ines', 'Ines', 'Ines']);
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas', before: takes[1] });
    expect(takes.map((id) => nameAt(phone.day(), id))).toEqual(['Ines', 'Tomas', 'Tomas']);
  });

  test('does not touch what was said again later', () => {
    const phone = wired();
    const first = phone.id(take('24', 1, 1));
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' });
    const second = phone.id(take('24', 1, 2));
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas', before: first });
    const day = phone.day();
    expect([first, second].map((id) => answersAtTake(day, id).tracks[2]!.name)).toEqual(['Tomas', 'Dora A1']);
  });
});
