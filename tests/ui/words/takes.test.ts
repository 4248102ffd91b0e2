import { expect, test } from 'vitest';
import { unitsOfTakes } from '../../../src/day/fold/units-of-takes.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import { statusWords } from '../../../src/ui/words/takes.ts';
import { speaker, take } from '../../day/say.ts';

test('a take says its unit but for the main one, and both where two units logged it', () => {
  const phone = speaker();
  const [own, theirs] = [phone.id(take('24', 0, 1)), phone.id(take('24', 0, 1, { unit: 'second' }))];
  const words = (): string[] => {
    const day = phone.day();
    return takesInOrder(day).map((one) => statusWords(one, unitsOfTakes(day).get(one.id)).join(', '));
  };
  expect(words()).toEqual(['', 'second unit']);
  phone.say({ kind: 'takes-joined', take: theirs, into: own });
  expect(words()).toEqual(['main unit, second unit']);
  phone.say({ kind: 'take-described', take: own, fields: { unit: 'second' } });
  expect(words()).toEqual(['second unit']);
});
