import { describe, expect, test } from 'vitest';
import { appendFacts, foldDay } from '../../src/day/fold.ts';
import { takesInOrder } from '../../src/day/takes.ts';
import type { TakeFields } from '../../src/facts/take-logged.ts';
import { speaker, take } from './say.ts';

describe('circled and NG', () => {
  /** How a take stands after these were said of it, one after the other, as any version of the app may have said them. */
  const marksAfter = (...said: TakeFields[]) => {
    const phone = speaker();
    const [first, ...later] = said;
    const id = phone.id(take('24', 1, 1, first));
    for (const fields of later) phone.say({ kind: 'take-described', take: id, fields });
    const [folded] = takesInOrder(phone.day());
    const { circled, noGood } = folded!;
    // Said to an open day, fact by fact, it is the same.
    const open = phone.facts.reduce((day, fact) => appendFacts(day, [fact]), foldDay('day-1', []));
    expect(takesInOrder(open)).toEqual([folded]);
    return { circled, noGood };
  };

  test('exclude each other: the later said stands, also on days that have both', () => {
    expect(marksAfter({ circled: true }, { noGood: true })).toEqual({ circled: false, noGood: true });
    expect(marksAfter({ noGood: true }, { circled: true })).toEqual({ circled: true, noGood: false });
    expect(marksAfter({ circled: true }, { noGood: true }, { circled: true })).toEqual({
      circled: true,
      noGood: false,
    });
  });

  test('said in one breath, NG stands: nobody prints a take that somebody called no good', () => {
    expect(marksAfter({ circled: true, noGood: true })).toEqual({ circled: false, noGood: true });
    expect(marksAfter({}, { circled: true, noGood: true })).toEqual({ circled: false, noGood: true });
  });

  test('taken off, leave the other as it is', () => {
    expect(marksAfter({ circled: true }, { noGood: false })).toEqual({ circled: true, noGood: false });
    expect(marksAfter({ noGood: true }, { circled: false })).toEqual({ circled: false, noGood: true });
  });
});
