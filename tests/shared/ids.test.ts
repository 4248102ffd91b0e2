import fc from 'fast-check';
import { expect, test } from 'vitest';
import { counterOf, FewIds, factId, HIGHEST_COUNTER } from '../../src/shared/ids.ts';

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
