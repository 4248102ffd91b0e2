import { describe, expect, test } from 'vitest';
import {
  nextSetup,
  parseSlate,
  sameSlate,
  setupLetters,
  setupOf,
  slateText,
  takeText,
} from '../../src/day/slate.ts';
import type { Slate } from '../../src/facts/take-logged.ts';

describe('setup letters', () => {
  // Alphabet of 24 without I and O, then AA, AB: common practice, no source; positions computed by hand.
  test.each([
    [0, ''],
    [1, 'A'],
    [8, 'H'],
    [9, 'J'],
    [13, 'N'],
    [14, 'P'],
    [24, 'Z'],
    [25, 'AA'],
    [26, 'AB'],
    [32, 'AH'],
    [33, 'AJ'],
    [48, 'AZ'],
    [49, 'BA'],
    [600, 'ZZ'],
    [601, 'AAA'],
  ])('setup %i is %s and back', (setup, letters) => {
    expect(setupLetters(setup)).toBe(letters);
    expect(setupOf(letters)).toBe(setup);
  });

  test('never use I or O, and run through without a gap', () => {
    for (let setup = 0; setup < 20_000; setup += 1) {
      const letters = setupLetters(setup);
      expect(letters).not.toMatch(/[IO]/);
      if (setupOf(letters) !== setup) expect(letters).toBe(setup);
    }
    expect(setupOf('I')).toBeUndefined();
    expect(setupOf('24')).toBeUndefined();
  });
});

describe('a typed slate', () => {
  test.each<[string, Slate['style'], string]>([
    ['24', 'lettered', '24'],
    ['24b', 'lettered', '24B'],
    [' 24 aa ', 'lettered', '24AA'],
    ['A24C', 'lettered', 'A24C'],
    ['118', 'numbered', '118'],
  ])('%s, %s, is %s', (typed, style, text) => {
    const read = parseSlate(typed, style, '24');
    expect(read.ok && slateText(read.value)).toBe(text);
  });

  test.each<[string, Slate['style'], string]>([
    ['', 'lettered', 'slate-without-number'],
    ['ABC', 'lettered', 'slate-without-number'],
    ['24I', 'lettered', 'slate-letter-unused'],
    ['24ZZZZZZZ', 'lettered', 'slate-too-long'],
    ['12B', 'numbered', 'slate-not-a-number'],
    ['1234567', 'numbered', 'slate-not-a-number'],
  ])('%s, %s, fails with %s', (typed, style, code) => {
    expect(parseSlate(typed, style)).toMatchObject({ ok: false, problem: { code, typed } });
  });

  test('is followed by the next letter, or the next number in the same scene', () => {
    expect(slateText(nextSetup({ style: 'lettered', scene: '24', setup: 8 }))).toBe('24J');
    expect(nextSetup({ style: 'numbered', number: 118, scene: '24' })).toEqual({
      style: 'numbered',
      number: 119,
      scene: '24',
    });
  });

  test('is the same slate whatever scene a running number stands in', () => {
    const a: Slate = { style: 'numbered', number: 7, scene: '1' };
    expect(sameSlate(a, { ...a, scene: '2' })).toBe(true);
    expect(sameSlate(a, { style: 'lettered', scene: '7', setup: 0 })).toBe(false);
  });
});

test('a take is called by slate and number, and by its kind where it is no ordinary one', () => {
  const slate: Slate = { style: 'lettered', scene: '24', setup: 2 };
  const called = (['take', 'pickup', 'mos', 'wild', 'tone'] as const).map((kind) =>
    takeText({ kind, slate, number: 3 }),
  );
  expect(called).toEqual(['24B/3', '24B/3 PU', '24B/3 MOS', 'WT3', 'RT3']);
});
