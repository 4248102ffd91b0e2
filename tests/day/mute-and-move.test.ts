import { describe, expect, test } from 'vitest';
import { answersNow } from '../../src/day/answers/answers.ts';
import { freeTrack, wayOutOfClash } from '../../src/day/answers/free-track.ts';
import { mutePointOf } from '../../src/day/answers/mute-point.ts';
import { packReach } from '../../src/day/answers/pack-reach.ts';
import { trackSince } from '../../src/day/answers/track-since.ts';
import { takeText } from '../../src/day/slate.ts';
import { takesInOrder } from '../../src/day/takes.ts';
import { bigDay } from './big-day.ts';
import { type Speaker, speaker, take } from './say.ts';
import { SMALL_CAST, SMALL_RIG } from './small-rig.ts';

function small(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  return phone;
}

/** The output of near 1 carries the channel of near 2 as well. */
function sharingAnInput(): Speaker {
  const phone = small();
  phone.say({ kind: 'part-described', part: 'near1out', fields: { carries: ['near1', 'near2'] } });
  return phone;
}

describe('where one voice is muted', () => {
  test('is the input that it has alone', () => {
    expect(mutePointOf(answersNow(small().day()), 'aes1', 'A1')).toEqual({ part: 'aes1', muted: false });
    expect(mutePointOf(answersNow(small().day()), 'in1', null)).toEqual({ part: 'in1', muted: false });
  });

  test('is the pack, where another comes in by the same input', () => {
    const answers = answersNow(sharingAnInput().day());
    expect(mutePointOf(answers, 'aes1', 'A1')).toEqual({ part: 'A1', muted: false });
    expect(mutePointOf(answers, 'aes1', 'A2')).toEqual({ part: 'A2', muted: false });
  });

  test('is wherever it is muted already, so that one tap unmutes it', () => {
    const atBody = small();
    atBody.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
    expect(mutePointOf(answersNow(atBody.day()), 'aes1', 'A1')).toEqual({ part: 'A1', muted: true });
    const atInput = sharingAnInput();
    atInput.say({ kind: 'mute-set', what: 'input', part: 'aes1', muted: true });
    expect(mutePointOf(answersNow(atInput.day()), 'aes1', 'A2')).toEqual({ part: 'aes1', muted: true });
  });
});

describe('the way out of a clash', () => {
  test('is the first track that no input feeds, for who came last', () => {
    const way = wayOutOfClash(answersNow(bigDay().day()), 'tr22');
    expect(way?.to.name).toBe('23');
    expect(way?.mover).toMatchObject({ voice: 'v22', input: 'line22' });
  });

  test('is a track whose inputs get nothing, where every track is fed', () => {
    const phone = small();
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3', 'tr4'] }] });
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l3', from: 'near3out', to: null }] });
    expect(freeTrack(answersNow(phone.day()))?.name).toBe('5');
    expect(wayOutOfClash(answersNow(phone.day()), 'tr3')?.to.name).toBe('5');
    // With an idle pack led to it, it would clash again as soon as somebody wears that.
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l3', from: 'near3out', to: 'aes3' }] });
    expect(freeTrack(answersNow(phone.day()))).toBeUndefined();
  });

  test('is not there for two who come in by one input, nor where there is no clash', () => {
    const phone = sharingAnInput();
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l2', from: 'near2out', to: null }] });
    const answers = answersNow(phone.day());
    expect(answers.tracks.find(({ track }) => track.id === 'tr3')?.state).toBe('clash');
    expect(wayOutOfClash(answers, 'tr3')).toBeUndefined();
    expect(wayOutOfClash(answersNow(bigDay().day()), 'tr24')).toBeUndefined();
  });
});

test('a pack is said with its channels and tracks, worn or not', () => {
  const day = small().day();
  const reachOf = packReach(day.rig, answersNow(day));
  const said = (pack: string): string[][] => {
    const { channels, tracks } = reachOf(pack);
    return [channels.map(({ name }) => name), tracks.map(({ name }) => name)];
  };
  expect(said('A1')).toEqual([['near 1'], ['3']]);
  expect(said('A3')).toEqual([['near 3'], ['5']]);
  expect(said('none')).toEqual([[], []]);
});

test('a track is used as it is since the first take of the row', () => {
  const phone = bigDay();
  const since = (before?: string): string | undefined => {
    const found = trackSince(phone.day(), 'tr22', before);
    return found && takeText(found);
  };
  const named = (name: string) => takesInOrder(phone.day()).find((one) => takeText(one) === name)!.id;
  expect(since()).toBe('45A/1');
  expect(since(named('45A/3'))).toBe('45A/1');
  expect(since(named('44/4'))).toBe('44/1');
  phone.say({ kind: 'transmitter-worn', transmitter: 'A22', voice: 'v23' });
  expect(since()).toBeUndefined();
  phone.say(take('46', 0, 1));
  expect(since()).toBe('46/1');
});
