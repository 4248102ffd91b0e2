import { describe, expect, test } from 'vitest';
import { isolated } from '../../../src/report/isolated.ts';
import { clustersOf, fromLeft, piecesOf } from '../../../src/report/pdf/pieces.ts';

const NOA = 'נועה';
const DAVID = 'דוד';

/** Pages that have Latin letters, and a system that has all but the letter ʘ. */
const drawers = {
  page: (character: string) => /[ -~\u00c0-\u024f]|\u0300/.test(character),
  system: (character: string) => character !== 'ʘ',
};
/** `'5 |<נועה'`: what the system draws after a bar, what goes from right to left after an arrow. */
const drawn = (text: string): string[] =>
  piecesOf(text, drawers).map(
    ({ text: piece, by, isRightToLeft }) =>
      `${by === 'system' ? '|' : ''}${isRightToLeft ? '<' : ''}${piece}`,
  );

describe('a line in pieces', () => {
  test('is one piece where the fonts of the pages have all of it', () => {
    expect(drawn('5 Lena, Zoë (ganged)')).toEqual(['5 Lena, Zoë (ganged)']);
  });

  test('leaves numbers and words beside a name to the pages', () => {
    expect(drawn('5 木村 (muted)')).toEqual(['5 ', '|木村', ' (muted)']);
    expect(drawn(`5 ${isolated(NOA)} (muted)`)).toEqual(['5 ', `|<${NOA}`, ' (muted)']);
  });

  test('takes a number into a name that goes from right to left, and none beside it', () => {
    expect(drawn(`5 ${isolated(`${NOA} 3`)}, 6 ${isolated(DAVID)}`)).toEqual([
      '5 ',
      `|<${NOA} 3`,
      ', 6 ',
      `|<${DAVID}`,
    ]);
  });

  test('that is one name has the direction of its first letter', () => {
    expect(drawn(`${NOA} Lea 3`)).toEqual([`|<${NOA} Lea 3`]);
    expect(drawn(`3 ${NOA}`)).toEqual([`|<3 ${NOA}`]);
    expect(drawn(`Lea ${NOA} ${DAVID} Cohen`)).toEqual(['Lea ', `|<${NOA} ${DAVID}`, ' Cohen']);
  });

  test('draws words whole, and a space between two of the system as theirs', () => {
    expect(drawn('a Zoëमी मीरा देवी b')).toEqual(['a ', '|Zoëमी मीरा देवी', ' b']);
    expect(drawn('xम y')).toEqual(['|xम', ' y']);
  });

  test('leaves a mark on a letter to the system, which knows where it belongs', () => {
    expect(drawn('r\u0300a b')).toEqual(['|r\u0300a', ' b']);
  });

  test('shows ? for what nothing has', () => {
    expect(drawn('木ʘ村 ʘ')).toEqual(['|木?村', ' ʘ']);
    expect(drawn(`${NOA}ʘ`)).toEqual([`|<${NOA}?`]);
  });

  test('ends an isolate that was cut off with the line', () => {
    expect(drawn(`5 ${isolated(NOA).slice(0, 3)}`)).toEqual(['5 ', `|<${NOA.slice(0, 2)}`]);
  });
});

test('letters are drawn from the left as they stand on the page, figures and Latin words as they are read', () => {
  const from = (text: string): string => fromLeft({ text, isRightToLeft: true }).join('');
  expect(from('אבג')).toBe('גבא');
  expect(from('אב 12.5 גד')).toBe('דג 12.5 בא');
  expect(from('אב Lea Ray גד')).toBe('דג Lea Ray בא');
  expect(fromLeft({ text: 'मीरा', isRightToLeft: false }).join('')).toBe('मीरा');
});

test('letters keep their marks and what a joiner ties to them', () => {
  expect(clustersOf('r\u0300a👩‍🎤👋🏽मी')).toEqual(['r\u0300', 'a', '👩‍🎤', '👋🏽', 'मी']);
});
