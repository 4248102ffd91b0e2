import { describe, expect, test } from 'vitest';
import { answersAtTake } from '../../../src/day/answers/answers.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { changesSaidLate } from '../../../src/reconcile/differences/late-changes.ts';
import { checkTracks, differingTracks } from '../../../src/reconcile/log-and-card/track-names.ts';
import type { Recording, RecordingTrack } from '../../../src/wave/recording/recordings.ts';
import { type Speaker, speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

/** Ines on track 3, Dora on 4, the boom on 2, nobody on 5, the mix on 1. */
function wired(...more: Draft[]): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  if (more.length > 0) phone.say(...more);
  return phone;
}

const recordingOf = (tracks: readonly Partial<RecordingTrack>[]): Recording =>
  ({ tracks: tracks.map((one) => ({ file: 'a.wav', interleave: 1, ...one })) }) as unknown as Recording;
const numbered = (names: Readonly<Record<number, string | undefined>>, more: Partial<RecordingTrack> = {}) =>
  recordingOf(Object.entries(names).map(([channel, name]) => ({ channel: Number(channel), name, ...more })));
const FILE = { 1: 'MixL', 2: 'Boom', 3: 'Ines', 4: 'Dora', 5: '' };

const take1 = (phone: Speaker): string => phone.id(take('24', 1, 1));
const differing = (phone: Speaker, names: Readonly<Record<number, string | undefined>>): string[] => {
  const id = take1(phone);
  return [...differingTracks(phone.day(), answersAtTake(phone.day(), id), numbered({ ...FILE, ...names }))];
};
const verdicts = (phone: Speaker, recording: Recording) => {
  const id = take1(phone);
  return checkTracks(phone.day(), answersAtTake(phone.day(), id), recording)?.map(
    ({ number, verdict }) => `${number} ${verdict}`,
  );
};

describe('a name in a file', () => {
  test.each([
    'Ines',
    'INES',
    'in-es',
    '',
    '3',
    'Tr 3',
    'TRK03',
    'Track 3',
    'Ch3',
    'Channel 3',
    'IN 3',
    'Input-3',
    'iso 3',
    'tr-003',
    '#3',
  ])('%j is that of Ines, or one the recorder gives by itself', (name) => {
    expect(differing(wired(), { 3: name })).toEqual([]);
  });

  test.each(['Dora', 'Ines 2', 'Ine', 'Tr 1234', 'Bus 3', 'Ines/Dora'])('%j is another', (name) => {
    expect(differing(wired(), { 3: name })).toEqual(['tr3']);
  });

  test('may be cut at eight letters and not before', () => {
    const phone = () =>
      wired({ kind: 'voice-described', voice: 'ines', fields: { part: 'Lighthouse keeper' } });
    expect(differing(phone(), { 3: 'Lighthou' })).toEqual([]);
    expect(differing(phone(), { 3: 'Lighthouse k' })).toEqual([]);
    expect(differing(phone(), { 3: 'Lightho' })).toEqual(['tr3']);
    expect(differing(phone(), { 3: 'Keeper of the light' })).toEqual(['tr3']);
  });

  test('of marks alone is compared by its marks', () => {
    const phone = () => wired({ kind: 'voice-described', voice: 'ines', fields: { part: '***' } });
    expect(differing(phone(), { 3: '***' })).toEqual([]);
    expect(differing(phone(), { 3: '+++' })).toEqual(['tr3']);
  });

  test('of a track named by hand is that name and no other', () => {
    const phone = () => wired({ kind: 'track-named', track: 'tr3', name: 'Wind' });
    expect(differing(phone(), { 3: 'wind' })).toEqual([]);
    expect(differing(phone(), { 3: 'Ines' })).toEqual(['tr3']);
  });

  test('of a mix may be what says mix, in name or function, or the name of the track', () => {
    expect(differing(wired(), { 1: 'Mix L' })).toEqual([]);
    expect(differing(wired(), { 1: '1' })).toEqual([]);
    expect(differing(wired(), { 1: 'Left' })).toEqual(['tr1']);
    const phone = wired();
    const id = take1(phone);
    const left = recordingOf([
      { channel: 1, name: 'Left', function: 'L-MIX' },
      ...[2, 3, 4].map((channel) => ({ channel, name: FILE[channel as 2] })),
    ]);
    expect([...differingTracks(phone.day(), answersAtTake(phone.day(), id), left)]).toEqual([]);
  });

  test('on a track with nobody is a difference, and so is a voice that is not on it', () => {
    expect(differing(wired(), { 5: 'Tomas' })).toEqual(['tr5']);
    expect(differing(wired(), { 5: 'Tr 5' })).toEqual([]);
  });
});

describe('the tracks of a file', () => {
  test('go by the number on the machine, of those that have one', () => {
    const recording = recordingOf([
      { channel: undefined, name: 'Ines' },
      ...Object.entries(FILE).map(([channel, name]) => ({ channel: Number(channel), name })),
    ]);
    expect(verdicts(wired(), recording)).toEqual(['1 same', '2 same', '3 same', '4 same', '5 same']);
  });

  test('go by their place where none has a number and there are as many', () => {
    const named = ['MixL', 'Boom', 'Ines', 'Tomas', ''].map((name) => ({ name }));
    expect(verdicts(wired(), recordingOf(named))).toEqual([
      '1 same',
      '2 same',
      '3 same',
      '4 name-differs',
      '5 same',
    ]);
    expect(verdicts(wired(), recordingOf(named.slice(1)))).toBeUndefined();
    expect(verdicts(wired(), recordingOf(named.map(() => ({}))))).toBeUndefined();
  });

  test('that are not there are missed where somebody could be heard', () => {
    expect(verdicts(wired(), numbered({ 5: '' }))).toEqual([
      '1 same',
      '2 not-recorded',
      '3 not-recorded',
      '4 not-recorded',
      '5 same',
    ]);
    const muted = wired({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
    expect(verdicts(muted, numbered({ 2: 'Boom', 4: 'Dora' }))).toContain('3 same');
    const clash = wired({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] });
    expect(verdicts(clash, numbered({ 2: 'Boom' }))).toContain('3 not-recorded');
  });

  test('called by a word are named by it, and have the number of their place in a file', () => {
    const phone = wired({ kind: 'part-described', part: 'tr3', fields: { name: 'Iso C' } });
    expect(verdicts(phone, numbered(FILE))?.[2]).toBe('Iso C same');
    const other = wired({ kind: 'part-described', part: 'tr3', fields: { name: ' 12 ' } });
    expect(verdicts(other, numbered({ ...FILE, 3: undefined, 12: 'Ines' }))?.[2]).toBe('12 same');
  });
});

describe('a change said late', () => {
  const tomas = (): Draft => ({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas' });
  const needed = (need: 'needed' | 'resting'): Draft => ({
    kind: 'voices-needed',
    voices: [{ voice: 'tomas', need }],
  });
  const late = (phone: Speaker, id: string) =>
    changesSaidLate(phone.day(), id, ['tr3'], numbered({ ...FILE, 3: 'Tomas' }));

  test('is found up to eight takes later', () => {
    for (const [takes, isFound] of [
      [7, true],
      [8, false],
    ] as const) {
      const phone = wired();
      const id = take1(phone);
      for (let number = 2; number <= takes; number += 1) phone.say(take('24', 1, number));
      phone.say(take('24', 2, 1));
      const change = phone.id(tomas());
      expect(late(phone, id)).toEqual(isFound ? [change] : null);
    }
  });

  test('is found among forty changes', () => {
    for (const [before, isFound] of [
      [39, true],
      [40, false],
    ] as const) {
      const phone = wired();
      const id = take1(phone);
      for (let at = 0; at < before; at += 1) phone.say(needed(at % 2 === 0 ? 'needed' : 'resting'));
      const change = phone.id(tomas());
      expect(late(phone, id)).toEqual(isFound ? [change] : null);
    }
  });

  test('is looked for up to the next take first, and taken alone', () => {
    const phone = wired();
    const id = take1(phone);
    const first = phone.id(tomas());
    phone.say(needed('needed'));
    phone.say(take('24', 1, 2));
    phone.say(tomas());
    phone.say(take('24', 1, 3));
    expect(late(phone, id)).toEqual([first]);
  });

  test('is none that was taken back, or that does not help', () => {
    const phone = wired();
    const id = take1(phone);
    const change = phone.id(tomas());
    phone.say({ kind: 'fact-retracted', targets: [change], by: 'hand' });
    phone.say(needed('needed'));
    expect(late(phone, id)).toBeNull();
  });
});
