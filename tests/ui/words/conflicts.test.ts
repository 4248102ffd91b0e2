import { describe, expect, test } from 'vitest';
import { conflictsOf } from '../../../src/day/phones/conflicts.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { modelOf } from '../../../src/ui/frame/sending/report-model.ts';
import { phoneClockWords } from '../../../src/ui/line/clock-words.ts';
import { undoneWords } from '../../../src/ui/words/actions.ts';
import { conflictTitle, conflictWords } from '../../../src/ui/words/conflicts.ts';
import { MORNING, speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { SetPhone } from '../../day/three-phones.ts';

const MINUTE = 60_000;
const worn = (voice: string): Draft => ({ kind: 'transmitter-worn', transmitter: 'A1', voice });

function twoPhones(behind = 0): [SetPhone, SetPhone] {
  const [a, b] = [new SetPhone(0, 0), new SetPhone(1, -behind)];
  for (const draft of [...SMALL_RIG, ...SMALL_CAST]) a.say(draft, MORNING);
  b.take(a);
  return [a, b];
}

describe('what phones differ in, in words', () => {
  test('names the alternatives, and the takes that they concern', () => {
    const [a, b] = twoPhones();
    a.say(worn('ines'), MORNING + MINUTE);
    b.say(worn('dora'), MORNING + 3 * MINUTE);
    for (const number of [1, 2, 3]) a.say(take('24', 0, number), MORNING + (5 + number) * MINUTE);
    a.take(b);
    const day = a.day();
    const conflicts = conflictsOf(day);
    expect(conflicts.map((one) => conflictWords(day, one))).toEqual([
      'Two phones differ: A1 on Dora, or A1 on Ines, on 24/1 to 24/3',
    ]);
    expect(modelOf(day, []).open.map(({ code }) => code)).toContain('phones-differ');
  });

  test('tells two of one kind apart', () => {
    const [a, b] = twoPhones();
    const takes = [1, 2].map((number) => a.say(take('24', 0, number), MORNING + number * MINUTE).id);
    b.take(a);
    for (const id of takes) {
      a.say({ kind: 'take-described', take: id, fields: { circled: true } }, MORNING + 5 * MINUTE);
      b.say({ kind: 'take-described', take: id, fields: { noGood: true } }, MORNING + 6 * MINUTE);
    }
    a.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'INES' } }, MORNING + 7 * MINUTE);
    b.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'Mrs Halm' } }, MORNING + 8 * MINUTE);
    a.take(b);
    const day = a.day();
    const titles = conflictsOf(day).map((one) => conflictTitle(day, one));
    expect(titles.sort()).toEqual(['24/1: circled or not', '24/2: circled or not', 'Mrs Halm: part']);
    expect(conflictsOf(day).map((one) => conflictWords(day, one))).toContain(
      'Two phones differ on 24/1: no good, or circled',
    );
  });

  test('names every field as people do', () => {
    const [a, b] = twoPhones();
    const say = (phone: SetPhone, inputKind: 'mic' | 'line', production: string, minutes: number): void => {
      const at = MORNING + minutes * MINUTE;
      phone.say({ kind: 'part-described', part: 'in1', fields: { inputKind, reserved: null } }, at);
      phone.say({ kind: 'day-described', fields: { production, boom: production } }, at);
    };
    say(a, 'mic', 'Salt Road', 5);
    say(b, 'line', 'Salt Roads', 6);
    a.take(b);
    const day = a.day();
    expect(conflictsOf(day).map((one) => conflictTitle(day, one))).toEqual([
      'in 1: connector',
      'the day details: production',
      'the day details: boom operator',
    ]);
  });

  test('asks about a change and a take that are too close to tell', () => {
    const [a, b] = twoPhones();
    b.say(worn('dora'), MORNING + MINUTE);
    a.say(take('24', 0, 1), MORNING + MINUTE + 1500);
    a.take(b);
    const day = a.day();
    expect(conflictsOf(day).map((one) => conflictTitle(day, one))).toEqual([
      'A1 on Dora: before 24/1 or after it?',
    ]);
  });
});

test('a phone whose clock is off is told, with how that is known', () => {
  const [a, b] = twoPhones(10 * MINUTE);
  a.tie(MORNING + MINUTE);
  b.tie(MORNING + 2 * MINUTE);
  a.take(b);
  expect(phoneClockWords(a.day())).toEqual([
    "Another phone's clock is 10 min behind the first; its entries are placed by the timecode both are synced to",
  ]);
  expect(phoneClockWords(twoPhones()[0].day())).toEqual([]);
});

test('undo says what it undid, and redo what it brought back', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  const id = phone.id(take('24', 0, 1));
  const [circled] = phone.say({ kind: 'take-described', take: id, fields: { circled: true } });
  const said = phone.say(worn('ines'), { kind: 'roll-changed', roll: '2' });
  const undo = phone.say({ kind: 'fact-retracted', targets: said.map((one) => one.id), by: 'undo' });
  expect(undoneWords(phone.day(), undo)).toBe('A1 on Ines and roll 2');
  const redo = phone.say({ kind: 'fact-retracted', targets: [undo[0]!.id], by: 'redo' });
  expect(undoneWords(phone.day(), redo)).toBe('A1 on Ines and roll 2');
  const off = phone.say({ kind: 'fact-retracted', targets: [circled!.id], by: 'undo' });
  expect(undoneWords(phone.day(), off)).toBe('24/1 circled');
});
