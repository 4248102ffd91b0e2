import { describe, expect, test } from 'vitest';
import { loadSampleFile } from '../../sample-days/load.ts';
import { compareStored } from '../../src/facts/stored.ts';

const facts = loadSampleFile('small').stored;

describe('a day in the copies and in the database', () => {
  test.each([0, 1, 2])('each gets what the other has: kills on either side (%i)', (from) => {
    const stored = facts.filter((_, at) => at % 3 !== from);
    const copied = facts.filter((_, at) => at % 3 !== (from + 1) % 3);
    const { extra: onlyStored, missing: onlyCopied } = compareStored(copied, stored);
    expect(onlyCopied).toEqual(facts.filter((_, at) => at % 3 === from));
    expect(onlyStored).toEqual(facts.filter((_, at) => at % 3 === (from + 1) % 3));
    expect(compareStored([...copied, ...onlyStored], [...stored, ...onlyCopied])).toEqual({
      extra: [],
      missing: [],
    });
  });

  test('are the same with their fields in another order', () => {
    const turned = facts.map((fact) => Object.fromEntries(Object.entries(fact).reverse()));
    expect(compareStored(facts, turned)).toEqual({ extra: [], missing: [] });
  });

  test('differ where an entry is damaged: what cannot be read is no entry, what says something else is none either', () => {
    const [first, second, ...rest] = facts;
    const damaged = [{ ...first!, kind: 7 }, { ...second!, at: 1 }, null, 'x', ...rest];
    expect(compareStored(facts, damaged)).toEqual({ extra: [], missing: [first, second] });
  });
});
