import { describe, expect, test } from 'vitest';
import { asBefore } from '../../src/shared/as-before.ts';

const list = () => [
  { name: 'Ines', by: ['a', 'b'], at: { input: 'in1' } },
  { name: 'Tove', by: [], at: null },
];

describe('a list as before', () => {
  test('is the list before where all of it says the same', () => {
    const before = list();
    expect(asBefore(list(), before)).toBe(before);
  });

  test('keeps the items that say the same, and has the others as made', () => {
    const before = list();
    const made = [list()[0]!, { ...list()[1]!, by: ['c'] }];
    const now = asBefore(made, before);
    expect(now).toEqual(made);
    expect(now[0]).toBe(before[0]);
    expect(now[1]).toBe(made[1]);
  });

  test.each([
    ['a shorter list', [], ['a']],
    ['a longer list', ['a', 'b'], ['a']],
    ['another name for a part', { one: undefined }, { two: undefined }],
    ['a part more', { one: 1, two: undefined }, { one: 1 }],
    ['a part less', { one: 1 }, { one: 1, two: undefined }],
    ['nothing', null, {}],
    ['a list for an object', [], {}],
    ['an object for a list', {}, []],
    ['another part deep inside', { of: [{ by: 'a' }] }, { of: [{ by: 'b' }] }],
  ])('takes %s for something else', (_, made: unknown, before: unknown) => {
    expect(asBefore([made], [before])[0]).toBe(made);
  });

  test('is the list made where it is shorter or there is none before', () => {
    const made = list().slice(1);
    expect(asBefore(made, list())).toEqual(made);
    expect(asBefore(made, undefined)).toBe(made);
  });
});
