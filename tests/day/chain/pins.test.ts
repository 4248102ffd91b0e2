import { expect, test } from 'vitest';
import { marksOf } from '../../../src/commands/day/carried-along.ts';
import { pinVoice } from '../../../src/commands/line/plan-ahead.ts';
import { strikePart } from '../../../src/commands/rig/strike-part.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { type PinsAsked, pinsOn } from '../../../src/day/chain/pins.ts';
import { problemOf } from '../../../src/plan/day/day-problem.ts';
import { setupProblem } from '../../../src/plan/day/setup-plans.ts';
import { type Laying, layingPhone } from '../../commands/rig-day.ts';
import { planNextSetup } from '../../plan/at-once.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../two-recorders.ts';

function cartAndBag(): Laying {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE, {
    kind: 'recorders-rolling',
    recorders: [CART, BAG],
  });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  return phone;
}

const on = (phone: Laying, { recorder, isMain }: PinsAsked) =>
  pinsOn(phone.day().rig, answersNow(phone.day()).links, 'ines', { recorder, isMain });
const onCart = (phone: Laying) => on(phone, { recorder: CART, isMain: true });
const onBag = (phone: Laying) => on(phone, { recorder: BAG, isMain: false });

test('of no recorder in particular they are of the main one, input and track of the one they are on', () => {
  const phone = cartAndBag();
  const pins = { transmitter: 'A1', channel: 'near1', input: 'bag-aes1', track: 'tr3', alone: true };
  phone.run((day) => pinVoice(day, 'ines', pins));
  expect(onCart(phone)).toEqual({ transmitter: 'A1', channel: 'near1', track: 'tr3', alone: true });
  expect(onBag(phone)).toEqual({ transmitter: 'A1', input: 'bag-aes1' });
  expect(on(phone, { recorder: BAG, isMain: true })).toEqual({
    transmitter: 'A1',
    channel: 'near1',
    input: 'bag-aes1',
    alone: true,
  });
});

test('each recorder keeps its own, and what is taken off one stays on the other', () => {
  const phone = cartAndBag();
  phone.run((day) => pinVoice(day, 'ines', { transmitter: 'A1' }));
  phone.run((day) => pinVoice(day, 'ines', { track: 'tr4', channel: 'near1' }, CART));
  phone.run((day) => pinVoice(day, 'ines', { track: 'bag-tr2', channel: 'near2' }, BAG));
  expect(onCart(phone)).toEqual({ transmitter: 'A1', track: 'tr4', channel: 'near1' });
  expect(onBag(phone)).toEqual({ transmitter: 'A1', track: 'bag-tr2', channel: 'near2' });
  phone.run((day) => pinVoice(day, 'ines', { track: undefined }, CART));
  phone.run((day) => pinVoice(day, 'ines', { channel: undefined }, BAG));
  expect(onCart(phone)).toEqual({ transmitter: 'A1', channel: 'near1' });
  expect(onBag(phone)).toEqual({ transmitter: 'A1', track: 'bag-tr2' });
});

test('what was said of none in particular can be taken off the recorder it holds on', () => {
  const phone = cartAndBag();
  phone.run((day) => pinVoice(day, 'ines', { input: 'bag-aes1', track: 'tr3' }));
  phone.run((day) => pinVoice(day, 'ines', { input: undefined }, BAG));
  expect(onBag(phone)).toEqual({});
  expect(onCart(phone)).toEqual({ track: 'tr3' });
});

test('the plan of a backup keeps the track pinned there, and the main one its own', () => {
  const phone = cartAndBag();
  phone.run((day) => pinVoice(day, 'ines', { track: 'tr4' }, CART));
  phone.run((day) => pinVoice(day, 'ines', { track: 'bag-tr2', alone: true }, BAG));
  const setup = { wanted: new Set(['ines']) };
  const main = planNextSetup(problemOf(phone.day(), setup.wanted));
  if (!main.ok) throw new Error(main.problem.code);
  expect(main.value.recorded.map(({ track }) => track)).toEqual(['tr4']);
  const problem = setupProblem(phone.day(), setup, [main.value])!;
  expect(problem.voices[0]).toMatchObject({ id: 'ines', pinnedTrack: 'bag-tr2', alone: true });
  const backup = planNextSetup(problem);
  if (!backup.ok) throw new Error(backup.problem.code);
  expect(backup.value.recorded.map(({ track }) => track)).toEqual(['bag-tr2']);
});

test('of a recorder they go along to the next day, and end with the part that they name', () => {
  const phone = cartAndBag();
  phone.run((day) => pinVoice(day, 'ines', { track: 'bag-tr2', input: 'bag-in1' }, BAG));
  const pinned = () => marksOf(phone.day()).filter(({ kind }) => kind === 'voice-pinned');
  const pins = { track: 'bag-tr2', input: 'bag-in1' };
  expect(pinned()).toEqual([{ kind: 'voice-pinned', voice: 'ines', pins, recorder: BAG }]);
  phone.run((day) => strikePart(day, 'bag-tr2'));
  expect(onBag(phone)).toEqual({ input: 'bag-in1' });
});
