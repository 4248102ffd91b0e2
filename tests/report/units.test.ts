import { describe, expect, test } from 'vitest';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { headLines, statusWords } from '../../src/report/printed/words.ts';
import { type Speaker, speaker, take } from '../day/say.ts';

const MAIN_AND_SECOND = [
  ['24', undefined],
  ['24', undefined],
  ['50', 'second'],
  ['25', undefined],
  ['51', 'second'],
  ['51', 'second'],
] as const;

/** Two takes of each slate and unit, as the units shot them by turns. */
function twoUnits(): { phone: Speaker; ids: string[] } {
  const phone = speaker();
  const ids = MAIN_AND_SECOND.map(([scene, unit], at) =>
    phone.id(take(scene, 0, at + 1, unit ? { unit } : {})),
  );
  return { phone, ids };
}
const units = ({ phone }: { phone: Speaker }, form?: number) =>
  headLines(reportOf(phone.day(), [], form).head).find(([label]) => label === 'Units')?.[1];
const words = ({ phone }: { phone: Speaker }, form?: number) =>
  reportOf(phone.day(), [], form).takes.map((line) => statusWords(line).join(', '));

describe('a day of two units', () => {
  test('says in the head which takes each shot', () => {
    const day = twoUnits();
    expect(units(day)).toBe('main unit: 24/1 to 24/2, 25/4\nsecond unit: 50/3, 51/5 to 51/6');
    expect(reportHtml(reportOf(day.phone.day()))).toContain('second unit: 50/3, 51/5 to 51/6');
    expect(reportText(reportOf(day.phone.day()))).toContain('main unit: 24/1 to 24/2, 25/4');
    for (const form of [1, 2]) expect(units(day, form)).toBeUndefined();
  });

  test('says nothing of units where one shot everything, whichever it is', () => {
    const phone = speaker();
    phone.say(take('24', 0, 1, { unit: 'splinter' }), take('24', 0, 2, { unit: 'splinter' }));
    expect(units({ phone })).toBeUndefined();
  });

  test('says of a take that both logged that it is of both until somebody says which; in earlier forms of its own', () => {
    const { phone, ids } = twoUnits();
    phone.say({ kind: 'takes-joined', take: ids[2]!, into: ids[1]! });
    expect(words({ phone })).toEqual(['', 'main unit, second unit', '', 'second unit', 'second unit']);
    expect(units({ phone })).toBe('main unit: 24/1 to 25/4\nsecond unit: 24/2, 51/5 to 51/6');
    for (const form of [1, 2]) expect(words({ phone }, form)[1]).toBe('');
    const joined = phone.facts.at(-1)!.id;
    phone.say({ kind: 'take-described', take: ids[2]!, fields: { unit: 'splinter' } });
    expect(words({ phone })[1]).toBe('main unit, splinter unit');
    const told = phone.id({ kind: 'take-described', take: ids[1]!, fields: { unit: 'main' } });
    expect(words({ phone })[1]).toBe('');
    phone.say({ kind: 'fact-retracted', targets: [told], by: 'hand' });
    expect(words({ phone })[1]).toBe('main unit, splinter unit');
    phone.say({ kind: 'fact-retracted', targets: [joined], by: 'hand' });
    expect(words({ phone })).toEqual(['', '', 'splinter unit', '', 'second unit', 'second unit']);
  });
});
