import { describe, expect, test } from 'vitest';
import { takeText } from '../../../src/day/slate.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import { firstShown, markWords, stripOf, turned } from '../../../src/ui/frame/from-when-strip.ts';
import { speaker, take } from '../../day/say.ts';

function takesOf(count: number) {
  const phone = speaker();
  for (let number = 1; number <= count; number += 1) phone.say(take('24', 0, number));
  return takesInOrder(phone.day());
}

const ten = takesOf(10);
const shownAt = (first: number, mark?: number): string => {
  const strip = stripOf(ten, first, mark === undefined ? undefined : ten[mark - 1]!.id);
  const words = strip.shown.map(
    ({ take: one, leftOut }) => `${leftOut ? '… ' : ''}${takeText(one).slice(3)}`,
  );
  return [...words, strip.leftOutAtEnd ? '… now' : 'now'].join(' ');
};

describe('the strip of takes', () => {
  test('opens at its end, or with its mark', () => {
    expect(firstShown(ten, undefined)).toBe(7);
    expect(firstShown(ten, ten[2]!.id)).toBe(2);
    expect(firstShown(ten, ten[9]!.id)).toBe(7);
    expect(firstShown(takesOf(2), undefined)).toBe(0);
  });

  test('shows three takes and now, wherever it is turned to', () => {
    expect(shownAt(7)).toBe('8 9 10 now');
    expect(shownAt(4)).toBe('5 6 7 … now');
    expect([turned(ten, 7, -3), turned(ten, 1, -3), turned(ten, 4, 3), turned(ten, 6, 3)]).toEqual([
      4, 0, 7, 7,
    ]);
    expect(turned(takesOf(2), 0, 3)).toBe(0);
  });

  test('always shows its mark, in the place of the take farthest from it', () => {
    expect(shownAt(7, 9)).toBe('8 9 10 now');
    expect(shownAt(7, 2)).toBe('2 … 9 10 now');
    expect(shownAt(1, 9)).toBe('2 3 … 9 … now');
    expect(shownAt(7, 7)).toBe('7 … 9 10 now');
  });

  test('says whether there is more on either side', () => {
    const more = (first: number) => {
      const { hasEarlier, hasLater } = stripOf(ten, first, undefined);
      return [hasEarlier, hasLater];
    };
    expect([more(7), more(4), more(0)]).toEqual([
      [true, false],
      [true, true],
      [false, true],
    ]);
  });

  test('says in words where the mark stands', () => {
    expect(markWords(ten, undefined)).toBe('now, after 24/10');
    expect(markWords(ten, ten[3]!.id)).toBe('before 24/4');
  });
});
