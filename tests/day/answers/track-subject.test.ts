import { describe, expect, test } from 'vitest';
import { moveToTrack } from '../../../src/commands/line/change-chain.ts';
import { answersBefore, answersNow } from '../../../src/day/answers/answers.ts';
import { isSubject, subjectAt, subjectOf } from '../../../src/day/answers/track-subject.ts';
import { speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';

/** 24A/1 with Dora's A2 on track 3; then AES 1 and 2 change places, and Ines's A1 is on it. */
function swapped() {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  phone.say({
    kind: 'inputs-sent',
    routes: [
      { input: 'aes1', tracks: ['tr4'] },
      { input: 'aes2', tracks: ['tr3'] },
    ],
  });
  const first = phone.id(take('24', 1, 1));
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({
    kind: 'inputs-sent',
    routes: [
      { input: 'aes1', tracks: ['tr3'] },
      { input: 'aes2', tracks: ['tr4'] },
    ],
  });
  return { phone, first };
}

describe('whoever a track is looked at for', () => {
  test('is the same pack at an earlier place, where somebody else’s is on the track', () => {
    const { phone, first } = swapped();
    const day = phone.day();
    const [here] = answersNow(day).tracks.find(({ track }) => track.id === 'tr3')!.heard;
    const subject = subjectOf(here!);
    expect(subject).toEqual({ pack: 'A1' });
    expect(subjectAt(answersNow(day), 'tr3', subject)).toMatchObject({ voice: 'ines', input: 'aes1' });
    const before = answersBefore(day, first);
    const [then] = before.tracks.find(({ track }) => track.id === 'tr3')!.heard;
    expect(then!.source.transmitter).toBe('A2');
    expect(isSubject(subject, then!)).toBe(false);
    // Nobody wore A1 then: no input is its own, so none is muted in its place.
    expect(subjectAt(before, 'tr3', subject)).toEqual({
      voice: null,
      heard: undefined,
      path: undefined,
      input: null,
    });
  });

  test('is followed to where it went instead', () => {
    const { phone, first } = swapped();
    const subject = { pack: 'A2' };
    expect(subjectAt(answersBefore(phone.day(), first), 'tr3', subject)).toMatchObject({
      voice: 'dora',
      heard: { input: 'aes2' },
      input: 'aes2',
    });
    const now = subjectAt(answersNow(phone.day()), 'tr3', subject);
    expect(now.heard).toBeUndefined();
    expect(now).toMatchObject({ voice: 'dora', input: 'aes2', path: { tracks: ['tr4'] } });
  });

  test('has no input of its own where another lead is in the socket', () => {
    const { phone } = swapped();
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l3', from: 'near3out', to: 'aes1' }] });
    expect(subjectAt(answersNow(phone.day()), 'tr3', { pack: 'A1' })).toMatchObject({
      voice: 'ines',
      input: null,
      path: { broken: 'pushed-out' },
    });
  });

  test('is a hardline voice, and not the pack that it may wear besides', () => {
    const { phone } = swapped();
    phone.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'boom' });
    const [boom] = answersNow(phone.day()).tracks.find(({ track }) => track.id === 'tr2')!.heard;
    expect(subjectOf(boom!)).toEqual({ hardline: 'boom' });
    expect(subjectAt(answersNow(phone.day()), 'tr2', { hardline: 'boom' })).toMatchObject({
      voice: 'boom',
      input: 'in1',
      path: { transmitter: null, lead: 'boom' },
    });
  });
});

test('an input that is sent to another track instead of one keeps the others that it feeds', () => {
  const { phone } = swapped();
  phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes1', tracks: ['tr3', 'tr5'] }] });
  expect(moveToTrack(phone.day(), 'aes1', 'tr3', 'tr4')).toEqual({
    ok: true,
    value: [{ kind: 'inputs-sent', routes: [{ input: 'aes1', tracks: ['tr5', 'tr4'] }] }],
  });
  expect(moveToTrack(phone.day(), 'aes1', 'tr3', 'tr5')).toEqual({
    ok: true,
    value: [{ kind: 'inputs-sent', routes: [{ input: 'aes1', tracks: ['tr5'] }] }],
  });
});
