import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  counterOf,
  databaseOf,
  FewIds,
  factId,
  HIGHEST_COUNTER,
  idSource,
  isFactId,
  isOfDatabase,
  writerOf,
} from '../../src/shared/ids.ts';

const SEED = 20261126;
const anyId = fc.tuple(fc.nat(HIGHEST_COUNTER), fc.constantFrom('k3f9x2a7b2c', '00000000000', 'zzzzzzzzzzz'));

test(`reads the counter as the platform reads base 36 (seed ${SEED})`, () => {
  fc.assert(
    fc.property(anyId, ([counter, writer]) => {
      const id = factId(counter, writer);
      expect(counterOf(id)).toBe(counter);
      expect(counterOf(id)).toBe(Number.parseInt(id.slice(0, 6), 36));
    }),
    { seed: SEED },
  );
});

test(`tells the ids of a set from all others, also from those of the same counter (seed ${SEED})`, () => {
  fc.assert(
    fc.property(fc.array(anyId), (pairs) => {
      const ids = pairs.map(([counter, writer]) => factId(counter, writer));
      const few = new FewIds(1000);
      for (const id of ids) few.add(id);
      expect(ids.every((id) => few.has(id))).toBe(true);
      expect(few.all).toEqual(new Set(ids));
      const others = pairs.flatMap(([counter]) => [
        factId(counter, 'otherphone1'),
        factId((counter + 1001) % HIGHEST_COUNTER, 'otherphone1'),
      ]);
      expect(others.some((id) => few.has(id))).toBe(false);
    }),
    { seed: SEED },
  );
  expect(new FewIds(0).has(factId(1, 'k3f9x2a7b2c'))).toBe(false);
});

describe('an id', () => {
  const id = factId(44, 'k3f9x2a7b2c');

  test('names its counter, its writer and the database of that writer', () => {
    expect(id).toBe('000018-k3f9x2a7b2c');
    expect(writerOf(id)).toBe('k3f9x2a7b2c');
    expect(databaseOf(id)).toBe('k3f9x2');
    expect(isOfDatabase(id, 'k3f9x2')).toBe(true);
    expect(isOfDatabase(id, 'a7b2c')).toBe(false);
    expect(isOfDatabase(factId(44, 'othersk3f9x'), 'k3f9x2')).toBe(false);
  });

  test.each([
    // The counter 500,000,000 and one more: files that were written must stay readable.
    ['89oqgw-k3f9x2a7b2c', true],
    ['89oqgx-k3f9x2a7b2c', false],
    [id.toUpperCase(), false],
    [`${id}0`, false],
    [id.slice(1), false],
    ['', false],
  ])('%s is one: %s', (text, isOne) => {
    expect(isFactId(text)).toBe(isOne);
  });
});

describe('a source of ids', () => {
  test('counts on from the highest counter, its own or one it has seen', () => {
    const source = idSource('k3f9x2a7b2c', 7);
    expect(counterOf(source.next())).toBe(8);
    source.see(factId(20, 'otherphone1'));
    source.see(factId(3, 'otherphone1'));
    expect(source.next()).toBe(factId(21, 'k3f9x2a7b2c'));
    expect(idSource('k3f9x2a7b2c').next()).toBe(factId(1, 'k3f9x2a7b2c'));
  });
});
