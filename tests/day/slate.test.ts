import { describe, expect, test } from 'vitest';
import { slatesOnLine } from '../../src/day/answers/found-on-line.ts';
import { fileNamesOf } from '../../src/day/files/file-name.ts';
import {
  nextSetup,
  parseSlate,
  sameSlate,
  setupLetters,
  setupOf,
  slateText,
  takeText,
} from '../../src/day/slate.ts';
import { nextNumber, slateAfter, takesNumberedTwice } from '../../src/day/takes.ts';
import type { Draft } from '../../src/facts/fact.ts';
import type { Slate } from '../../src/facts/kinds/take-logged.ts';
import { speaker } from './say.ts';

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
    expect(sameSlate(a, { ...a, number: 8 })).toBe(false);
  });
});

describe('one board is one slate', () => {
  const setupOfScene: Slate = { style: 'lettered', scene: '2', setup: 1 };
  const sceneAlone: Slate = { style: 'lettered', scene: '2A', setup: 0 };
  const numbered: Slate = { style: 'numbered', number: 2, scene: '5A' };
  const master: Slate = { style: 'lettered', scene: '2', setup: 0 };

  const takeOf = (slate: Slate, number: number, more: object = {}): Draft => ({
    kind: 'take-logged',
    fields: { kind: 'take', slate, number, ...more },
  });

  test('slate 2A of scene 2 and scene 2A are one slate, and so are running number 2 and scene 2', () => {
    expect(sameSlate(setupOfScene, sceneAlone)).toBe(true);
    expect(sameSlate(numbered, master)).toBe(true);
    expect(sameSlate(master, numbered)).toBe(true);
    expect(sameSlate(setupOfScene, master)).toBe(false);
    expect(sameSlate({ ...sceneAlone, scene: '2B' }, sceneAlone)).toBe(false);
    expect(sameSlate({ ...setupOfScene, setup: 2 }, setupOfScene)).toBe(false);
  });

  test.each([
    [setupOfScene, sceneAlone],
    [numbered, master],
  ])('%o and %o count one row of takes, and a number they share is logged twice', (one, other) => {
    const phone = speaker();
    const first = phone.id(takeOf(one, 1));
    expect(nextNumber(phone.day(), 'take', other)).toBe(2);
    const second = phone.id(takeOf(other, 1));
    const twice = takesNumberedTwice(phone.day()).map((takes) => takes.map(({ id }) => id));
    expect(twice).toEqual([[first, second]]);
    expect(slatesOnLine(phone.day()).map(({ take }) => take)).toEqual([second]);
  });

  test('false starts of one board get different files, whatever its slate was called', () => {
    const phone = speaker();
    phone.say(takeOf(setupOfScene, 1, { falseStart: true }));
    phone.say(takeOf(sceneAlone, 1, { falseStart: true }));
    expect([...fileNamesOf(phone.day()).values()]).toEqual(['2AT1FS.wav', '2AT1FS2.wav']);
  });

  test('the next setup passes over a scene that reads like it', () => {
    const phone = speaker();
    phone.say(takeOf({ ...sceneAlone, scene: '2B' }, 1));
    phone.say(takeOf(setupOfScene, 1));
    expect(slateText(slateAfter(phone.day()))).toBe('2C');
  });
});

test('a take is called by slate and number, and by its kind where it is no ordinary one', () => {
  const slate: Slate = { style: 'lettered', scene: '24', setup: 2 };
  const called = (['take', 'pickup', 'mos', 'wild', 'tone'] as const).map((kind) =>
    takeText({ kind, slate, number: 3 }),
  );
  expect(called).toEqual(['24B/3', '24B/3 PU', '24B/3 MOS', 'WT3', 'RT3']);
});
