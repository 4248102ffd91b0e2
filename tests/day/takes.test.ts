import { describe, expect, test } from 'vitest';
import { slatesOnLine } from '../../src/day/answers/found-on-line.ts';
import { fileNamesOf } from '../../src/day/files/file-name.ts';
import { appendFacts, foldDay } from '../../src/day/fold/fold.ts';
import { slateText } from '../../src/day/slate.ts';
import {
  currentSlate,
  nextNumber,
  nextTake,
  openTakes,
  slateAfter,
  takesInOrder,
  takesNumberedTwice,
} from '../../src/day/takes.ts';
import type { Slate, TakeFields } from '../../src/facts/kinds/take-logged.ts';
import { MORNING, speaker, take } from './say.ts';

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

describe('the next number', () => {
  const A: Slate = { style: 'lettered', scene: '24', setup: 1 };

  test('is given back by a false start, wherever it stands', () => {
    const phone = speaker();
    expect(nextNumber(phone.day(), 'take', A)).toBe(1);
    phone.say(take('24', 1, 1, { falseStart: true }));
    expect(nextNumber(phone.day(), 'take', A)).toBe(1);
    phone.say(take('24', 1, 1));
    phone.say(take('24', 1, 2, { falseStart: true }));
    expect(nextNumber(phone.day(), 'take', A)).toBe(2);
    const id = phone.id(take('24', 1, 2));
    expect(nextNumber(phone.day(), 'take', A)).toBe(3);
    phone.say({ kind: 'take-described', take: id, fields: { falseStart: true } });
    expect(nextNumber(phone.day(), 'take', A)).toBe(2);
  });

  test('is one above the highest of its slate, also when that is not the last', () => {
    const phone = speaker();
    phone.say(take('24', 1, 7), take('24', 1, 3), take('24', 2, 9));
    expect(nextNumber(phone.day(), 'take', A)).toBe(8);
    expect(nextNumber(phone.day(), 'pickup', A)).toBe(8);
    expect(nextNumber(phone.day(), 'mos', A)).toBe(8);
  });

  test('is given back by a false start of a wild track, too', () => {
    const phone = speaker();
    phone.say(take('24', 1, 1, { kind: 'wild', falseStart: true }));
    expect(nextNumber(phone.day(), 'wild', A)).toBe(1);
  });
});

describe.each(['wild', 'tone'] as const)('a take that is counted on its own: %s', (kind) => {
  const other = kind === 'wild' ? 'tone' : 'wild';
  const phone = speaker();
  phone.say(take('24', 1, 1));
  phone.say(take('30', 0, 2, { kind }));
  const twice = phone.id(take('31', 0, 2, { kind }));
  phone.say(take('24', 2, 2, { kind: other }));
  const day = phone.day();

  test('has a number of its own, apart from its slate and from the other such kind', () => {
    expect(nextNumber(day, kind, { style: 'lettered', scene: '24', setup: 1 })).toBe(3);
    expect(nextNumber(day, other, { style: 'lettered', scene: '30', setup: 0 })).toBe(3);
    expect(nextNumber(day, 'take', { style: 'lettered', scene: '30', setup: 0 })).toBe(1);
  });

  test('leaves the slate at hand, and uses none up', () => {
    expect(slateText(currentSlate(day))).toBe('24A');
    expect(nextTake(day)).toEqual({ kind: 'take', slate: currentSlate(day), number: 2 });
    expect(slateText(slateAfter(day))).toBe('24B');
    expect(slatesOnLine(day).map(({ slate }) => slateText(slate))).toEqual(['24A']);
  });

  test('is numbered twice with one of its kind and number, whatever slate it is near', () => {
    const groups = takesNumberedTwice(day).map((takes) => takes.map(({ id }) => id));
    expect(groups).toEqual([[day.takeOrder[1], twice]]);
  });

  test('has the name of its kind as its file', () => {
    const [own, others] = kind === 'wild' ? ['WT2.wav', 'RT2.wav'] : ['RT2.wav', 'WT2.wav'];
    expect([...fileNamesOf(day).values()].slice(1)).toEqual([own, own, others]);
  });
});

describe('a take is open', () => {
  test('from its Roll to its Cut, or until a length is typed; not without a Roll', () => {
    const phone = speaker();
    const rolled = { length: null, rolledAt: MORNING };
    const [open, cut, typed] = [1, 2, 3].map((number) => phone.id(take('24', 1, number, rolled)));
    phone.say(take('24', 1, 4, { length: null }));
    expect(openTakes(phone.day()).map(({ id }) => id)).toEqual([open, cut, typed]);
    phone.say({ kind: 'take-described', take: cut!, fields: { cutAt: MORNING + 1 } });
    phone.say({
      kind: 'take-described',
      take: typed!,
      fields: { length: { frames: 0, rate: '25' } },
    });
    expect(openTakes(phone.day()).map(({ id }) => id)).toEqual([open]);
  });
});
