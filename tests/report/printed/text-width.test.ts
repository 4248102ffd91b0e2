import { describe, expect, test } from 'vitest';
import { padTo, textWidth, wrapText, wrapUnits } from '../../../src/report/printed/text-width.ts';

describe('the columns a text takes', () => {
  test.each([
    ['', 0],
    ['plain · text', 12],
    ['Zoë', 3],
    ['Zoe\u0308', 3],
    ['a\u200db', 2],
    ['音声', 4],
    ['한글', 4],
    ['ＡＢ', 4],
    ['🎧', 2],
    ['é音🎧', 5],
  ])('%j takes %i', (text, width) => {
    expect(textWidth(text)).toBe(width);
  });

  test('are filled up and never cut', () => {
    expect([padTo('音', 4), padTo('abcd', 4), padTo('abcde', 4), padTo('', 2)]).toEqual([
      '音  ',
      'abcd',
      'abcde',
      '  ',
    ]);
  });
});

describe('wrapping', () => {
  test.each([
    ['one two', 7, ['one two']],
    ['one two', 6, ['one', 'two']],
    ['one two three', 7, ['one two', 'three']],
    ['abcdefgh', 3, ['abc', 'def', 'gh']],
    ['a abcdef b', 3, ['a', 'abc', 'def', 'b']],
    ['音声音', 4, ['音声', '音']],
    ['one\ntwo', 9, ['one', 'two']],
    ['one\n\ntwo', 9, ['one', '', 'two']],
    ['', 5, ['']],
    [' a ', 5, ['a ']],
  ])('%j to %i columns', (text, width, lines) => {
    expect(wrapText(text, width)).toEqual(lines);
  });

  test.each([
    [['1 Mix', '2 Boom'], 14, ['1 Mix · 2 Boom']],
    [['1 Mix', '2 Boom'], 13, ['1 Mix', '2 Boom']],
    [['1 Mix', '2 Boom', '3 A'], 14, ['1 Mix · 2 Boom', '3 A']],
    [['1', '22 333 4444', '5'], 6, ['1', '22 333', '4444', '5']],
    [['1', '22 333 4', '5'], 6, ['1', '22 333', '4 · 5']],
    [[], 6, []],
  ])('units %j to %i columns', (units, width, lines) => {
    expect(wrapUnits(units, ' · ', width)).toEqual(lines);
  });
});
