import { expect, test } from 'vitest';
import { describePart } from '../../../src/commands/day/describe.ts';
import { backAgain, wayBack } from '../../../src/commands/line/back-again.ts';
import { sendInput } from '../../../src/commands/line/change-chain.ts';
import { addRecorder, rollRecorders } from '../../../src/commands/line/roll-recorders.ts';
import { plugRun } from '../../../src/commands/rig/plug-run.ts';
import { strikePart } from '../../../src/commands/rig/strike-part.ts';
import { answersAtTake, answersNow } from '../../../src/day/answers/answers.ts';
import { rollingAtTake } from '../../../src/day/recorders/rolling.ts';
import { sentenceFor } from '../../../src/ui/words/problems.ts';
import { take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../../day/two-recorders.ts';
import { type Laying, layingPhone, problemOf } from '../rig-day.ts';

function cartAndBag(): Laying {
  const phone = layingPhone();
  phone.say(
    { kind: 'day-described', fields: { recorder: 'Cart' } },
    ...SMALL_RIG,
    ...SMALL_CAST,
    ...BAG_BESIDE,
  );
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  return phone;
}

test('what cannot be is refused, each in a sentence', () => {
  const phone = cartAndBag();
  phone.say({ kind: 'recorders-rolling', recorders: [BAG] }, take('1', 0, 1));
  const day = phone.day();
  const refused = [
    plugRun(day, ['near1out', 'near1out'], ['bag-in1', 'bag-aes1']),
    sendInput(day, 'bag-aes1', ['tr3']),
    addRecorder(day, 'Bag'),
    addRecorder(day, ' Cart '),
    strikePart(day, BAG),
    rollRecorders(day, []),
    backAgain(cartAndBag().day()),
  ].map((said) => sentenceFor(problemOf(said)!));
  expect(refused).toEqual([
    'near 1 cannot go into two inputs of one recorder. Send one input to both tracks instead.',
    'Track 3 is on another recorder than AES 1.',
    '“Bag” is in the rig already. Two of a kind need two names.',
    '“Cart” is in the rig already. Two of a kind need two names.',
    'Bag rolled on 1/1, and this would change that take. Stop it from here on instead.',
    'One recorder at least has to roll.',
    'The unit has not moved on this day.',
  ]);
});

test('an input, a track or a send is given to another recorder only where no take loses by it', () => {
  const phone = cartAndBag();
  phone.say(take('1', 0, 1), { kind: 'recorders-rolling', recorders: [CART, BAG] }, take('1', 0, 2));
  const day = phone.day();
  const refused = [
    describePart(day, 'aes1', { recorder: BAG }),
    describePart(day, 'tr3', { recorder: BAG }),
    describePart(day, 'aes3', { recorder: BAG }),
    describePart(day, 'tr5', { recorder: BAG }),
    describePart(day, 'bag-in1', { recorder: CART }),
    describePart(day, 'bag-send', { recorder: 'none' }),
  ].map((said) => sentenceFor(problemOf(said)!));
  expect(refused).toEqual([
    'AES 1 was used on 1/1, and this would change that take. Unplug, retune or throw it from here on instead.',
    'Track 3 was used on 1/1, and this would change that take. Unplug, retune or throw it from here on instead.',
    'Track 5 is on another recorder than AES 3.',
    'Track 5 is on another recorder than AES 3.',
    '“in 1” is in the rig already. Two of a kind need two names.',
    sentenceFor({ code: 'not-on-this-day', what: 'recorder' }),
  ]);
  expect(describePart(day, 'bag-send', { recorder: CART })).toMatchObject({ ok: true });
  expect(describePart(day, 'aes1', { recorder: CART })).toMatchObject({ ok: true });

  // The last track of a recorder that rolled, and the first one of a backup that has those of the first.
  phone.say({ kind: 'part-described', part: 'backup', fields: { type: 'recorder', name: 'Backup' } });
  phone.say({ kind: 'recorders-rolling', recorders: [CART, 'backup'] }, take('1', 0, 3));
  phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes3', tracks: [] }] });
  expect(problemOf(describePart(phone.day(), 'tr5', { recorder: 'backup' }))).toMatchObject({
    code: 'tracks-of-first',
    name: 'Backup',
  });
});

test('two leads of one output in two inputs of a recorder, as a file may have them, are one voice heard twice', () => {
  const phone = cartAndBag();
  phone.say({ kind: 'leads-plugged', leads: [{ lead: 'split', from: 'near1out', to: 'aes2' }] });
  const { voices, summary } = answersNow(phone.day());
  expect(voices.find(({ voice }) => voice.id === 'ines')).toMatchObject({
    state: 'alone',
    tracks: ['tr3', 'tr4'],
  });
  expect(summary).toMatchObject({ sources: 2, clashes: 0, unrecorded: [] });
});

test('a recorder deleted on another phone while it is said to roll: the first one does', () => {
  const phone = cartAndBag();
  phone.say({ kind: 'part-described', part: BAG, fields: { struck: true } });
  phone.say({ kind: 'recorders-rolling', recorders: [BAG] });
  const id = phone.id(take('1', 0, 1));
  expect(rollingAtTake(phone.day(), id).map(({ name }) => name)).toEqual(['Cart']);
  expect(answersAtTake(phone.day(), id)).toMatchObject({
    main: { recorder: CART },
    summary: { unrecorded: [] },
  });
  // Its inputs and tracks, which were not deleted with it, are nobody's.
  expect(answersNow(phone.day()).recorders.map(({ recorder }) => recorder)).toEqual([CART]);
  expect(answersNow(phone.day()).summary.tracks).toBe(4);
});

test('back again after a move inside another goes back over the last on the line', () => {
  const phone = cartAndBag();
  phone.run((day) => rollRecorders(day, [BAG]));
  const first = phone.id(take('1', 0, 1));
  const second = phone.id(take('1', 0, 2));
  phone.run((day) => rollRecorders(day, [CART], { before: second }));
  expect(wayBack(phone.day())).toEqual({ recorders: [BAG], moves: [] });
  phone.run(backAgain);
  const third = phone.id(take('1', 0, 3));
  const on = [first, second, third].map((id) => rollingAtTake(phone.day(), id)[0]!.name);
  expect(on).toEqual(['Bag', 'Cart', 'Bag']);
});
