import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { mergeFacts } from '../../src/facts/merge-facts.ts';
import { factId } from '../../src/shared/ids.ts';

const roll = (counter: number, value: string, more: object = {}): Envelope =>
  ({
    id: factId(counter, 'phonea00000'),
    day: 'day-1',
    kind: 'roll-changed',
    v: 1,
    at: 0,
    zone: 0,
    roll: value,
    ...more,
  }) as Envelope;

describe('merging facts', () => {
  test('gives what is new, in the order of ids, and counts what is known', () => {
    const [a, b, c, d] = [roll(1, 'a'), roll(2, 'b'), roll(3, 'c'), roll(4, 'd')];
    expect(mergeFacts([a, c], [d, c, b])).toEqual({ ok: true, value: { fresh: [b, d], same: 1 } });
  });

  test('two ids with different bodies are all named, and nothing is fresh', () => {
    const known = [roll(1, 'a'), roll(2, 'b'), roll(3, 'c')];
    const read = mergeFacts(known, [roll(3, 'X'), roll(9, 'new'), roll(1, 'Y'), roll(2, 'b')]);
    expect(read).toEqual({
      ok: false,
      problem: { code: 'fact-id-twice', ids: [roll(1, '').id, roll(3, '').id] },
    });
  });

  test('two incoming facts that claim one id are noticed too', () => {
    expect(mergeFacts([], [roll(1, 'a'), roll(1, 'b')])).toEqual({
      ok: false,
      problem: { code: 'fact-id-twice', ids: [roll(1, '').id] },
    });
  });

  test.each([
    ['the order of fields', { b: 1, a: { x: 1, y: [1, 2] } }, { a: { y: [1, 2], x: 1 }, b: 1 }, true],
    ['a field that is not there and one that is undefined', { a: undefined }, {}, true],
    ['the mark of an unknown kind', { unknown: true }, {}, true],
    ['the order of a list', { a: [1, 2] }, { a: [2, 1] }, false],
    ['null and nothing', { a: null }, {}, false],
    ['a number and its digits', { a: 1 }, { a: '1' }, false],
    ['an empty list and an empty object', { a: [] }, { a: {} }, false],
    ['a name that looks like two', { 'a":1,"b': 1 }, { a: 1, b: 1 }, false],
    ['a field called __proto__', JSON.parse('{"__proto__":{"a":1}}') as object, {}, false],
  ])('equality and %s', (_, one, other, same) => {
    expect(mergeFacts([roll(1, 'a', one)], [roll(1, 'a', other)]).ok).toBe(same);
  });

  test('merging twice, or in another order, gives one union (seed 7)', () => {
    const journal = fc
      .uniqueArray(fc.nat(40), { maxLength: 30 })
      .map((ids) => ids.map((id) => roll(id, `r${id}`)));
    fc.assert(
      fc.property(journal, journal, (one, other) => {
        const union = (known: Envelope[], incoming: Envelope[]) => {
          const merged = mergeFacts(known, incoming);
          return merged.ok ? [...known, ...merged.value.fresh] : [];
        };
        const forth = union(one, other);
        const back = union(other, one);
        expect(new Set(forth.map(({ id }) => id))).toEqual(new Set(back.map(({ id }) => id)));
        expect(forth.length).toBe(new Set([...one, ...other].map(({ id }) => id)).size);
        expect(mergeFacts(forth, other)).toEqual({ ok: true, value: { fresh: [], same: other.length } });
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});
