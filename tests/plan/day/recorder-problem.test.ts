import { expect, test } from 'vitest';
import { pinVoice } from '../../../src/commands/line/plan-ahead.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { problemOf } from '../../../src/plan/day/day-problem.ts';
import { type Laying, layingPhone } from '../../commands/rig-day.ts';
import { take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../../day/two-recorders.ts';

const plug = (lead: string, from: string, to: string): Draft => ({
  kind: 'leads-plugged',
  leads: [{ lead, from, to }],
});

/** Ines and Dora on the cart, Ines on the bag too; a channel of Tomas' own goes to the bag only. */
function cartAndBag(...rolling: string[]): Laying {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE, { kind: 'recorders-rolling', recorders: rolling });
  phone.say(plug('l3', 'near3out', 'bag-in1'), plug('bag-l1', 'near1out', 'bag-aes1'));
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  return phone;
}

const wanted = new Set(['ines', 'dora', 'tomas']);
const voiceIn = ({ voices }: ReturnType<typeof problemOf>, id: string) =>
  voices.find((one) => one.id === id)!;
const channelIn = ({ channels }: ReturnType<typeof problemOf>, id: string) =>
  channels.find((one) => one.id === id)!;

test('a recorder is planned with its own inputs, tracks and leads', () => {
  const day = cartAndBag(CART).day();
  const cart = problemOf(day, wanted);
  const bag = problemOf(day, wanted, { recorder: BAG });
  expect(cart.inputs.map(({ id }) => id)).toEqual(['in1', 'aes1', 'aes2', 'aes3']);
  expect(cart.tracks.map(({ id }) => id)).toEqual(['tr2', 'tr3', 'tr4', 'tr5']);
  expect(bag.inputs.map(({ id }) => id)).toEqual(['bag-in1', 'bag-aes1']);
  expect(bag.tracks.map(({ id }) => id)).toEqual(['bag-tr2', 'bag-tr3']);
  const plugged = ({ paths }: typeof cart) =>
    paths.filter((path) => path.plugged).map(({ source, input, lead }) => [source, input, lead]);
  expect(plugged(cart)).toEqual([
    ['near1', 'aes1', 'l1'],
    ['near2', 'aes2', 'l2'],
    ['boom', 'in1', 'boom'],
  ]);
  expect(plugged(bag)).toEqual([
    ['near1', 'bag-aes1', 'bag-l1'],
    ['near3', 'bag-in1', 'l3'],
  ]);
  // Where it has no lead to the bag it would get one beside that to the cart.
  expect(bag.paths.find(({ source, input }) => source === 'near2' && input === 'bag-aes1')?.lead).toBe(
    'lead-near2out',
  );
});

test('what a recorder before it hears stays, packs and channels, while both roll', () => {
  const both = problemOf(cartAndBag(CART, BAG).day(), wanted, { recorder: BAG });
  expect(voiceIn(both, 'ines').pinnedTransmitter).toBe('A1');
  expect(voiceIn(both, 'dora').pinnedTransmitter).toBe('A2');
  expect(voiceIn(both, 'tomas')).not.toHaveProperty('pinnedTransmitter');
  expect(channelIn(both, 'near2')).toMatchObject({ canTune: ['A2'], stays: true });
  expect(channelIn(both, 'near3')).not.toHaveProperty('canTune');
  // The main one is bound by nobody, nor is the bag where it rolls alone.
  for (const free of [
    problemOf(cartAndBag(CART, BAG).day(), wanted, { recorder: CART }),
    problemOf(cartAndBag(BAG).day(), wanted),
  ]) {
    expect(voiceIn(free, 'ines')).not.toHaveProperty('pinnedTransmitter');
    expect(channelIn(free, 'near2')).not.toHaveProperty('canTune');
  }
});

test('a channel that another recorder hears is not tuned away, whether that one rolls or not', () => {
  const cart = problemOf(cartAndBag(CART).day(), wanted);
  expect(channelIn(cart, 'near1')).toMatchObject({ stays: true });
  expect(channelIn(cart, 'near2')).not.toHaveProperty('stays');
});

test('a pack that somebody else is pinned to is not held twice', () => {
  const phone = cartAndBag(CART, BAG);
  phone.run((day) => pinVoice(day, 'tomas', { transmitter: 'A1' }));
  const { voices } = problemOf(phone.day(), wanted, { recorder: BAG });
  expect(voices.flatMap(({ pinnedTransmitter }) => pinnedTransmitter ?? [])).toEqual(['A2', 'A1']);
});

test('a pin to an input or a track, and the last track, are of the recorder they are on', () => {
  const phone = cartAndBag(CART);
  phone.run((day) => pinVoice(day, 'ines', { track: 'tr4', input: 'bag-aes1' }));
  const first = phone.id(take('1', 0, 1));
  phone.say({ kind: 'recorders-rolling', recorders: [BAG] }, take('1', 0, 2));
  const cart = problemOf(phone.day(), wanted, { recorder: CART });
  const bag = problemOf(phone.day(), wanted, { recorder: BAG });
  expect(voiceIn(cart, 'ines')).toMatchObject({ pinnedTrack: 'tr4', lastTrack: 'tr3' });
  expect(voiceIn(cart, 'ines')).not.toHaveProperty('pinnedInput');
  expect(voiceIn(bag, 'ines')).toMatchObject({ pinnedInput: 'bag-aes1', lastTrack: 'bag-tr3' });
  expect(voiceIn(bag, 'ines')).not.toHaveProperty('pinnedTrack');
  const early = problemOf(phone.day(), wanted, { recorder: CART, before: first });
  expect(voiceIn(early, 'ines')).not.toHaveProperty('lastTrack');
});
