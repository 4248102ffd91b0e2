import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import { envelope } from '../../src/facts/envelope.ts';
import { KINDS } from '../../src/facts/fact.ts';
import { quickCheck } from '../../src/facts/quick-check.ts';
import { EXAMPLE_BODIES } from './example-bodies.ts';

const SEED = 9;
const accepts = (shape: z.ZodMiniType, value: unknown): boolean => shape.safeParse(value).success;

/** What a stranger's file or a damaged disk may hold in the place of a field. */
const strange = fc.oneof(
  fc.constantFrom<unknown>(null, undefined, true, '', 'a', 'input', -1, 0, 1.5, 1e9, 1e300, Number.NaN),
  fc.constantFrom<unknown>(
    [],
    [null],
    ['a'],
    {},
    { style: 'lettered' },
    new Date(0),
    new Map(),
    Object.create(null),
  ),
  fc.string({ maxLength: 300 }),
  fc.integer(),
  fc.constant('x'.repeat(4001)),
);

/** The value with one place in it, however deep, put over, left out or added. */
function spoil(value: unknown, path: readonly number[], by: unknown, how: number): unknown {
  const isList = Array.isArray(value);
  if (path.length === 0 || typeof value !== 'object' || value === null) return by;
  const entries = Object.entries(value);
  const [first = 0, ...rest] = path;
  if (how % 3 === 1 && rest.length === 0) entries.push([isList ? `${entries.length}` : 'further', by]);
  else if (entries.length > 0) {
    const at = first % entries.length;
    if (how % 3 === 2 && rest.length === 0) entries.splice(at, 1);
    else entries[at] = [entries[at]![0], spoil(entries[at]![1], rest, by, how)];
  }
  return isList ? entries.map(([, item]) => item) : Object.fromEntries(entries);
}

const spoilt = (good: unknown) =>
  fc
    .tuple(fc.array(fc.nat(30), { maxLength: 4 }), strange, fc.nat(2))
    .map(([path, by, how]) => spoil(good, path, by, how));

describe('the quick check of a shape', () => {
  test.each(KINDS.map((kind) => [kind.name, kind] as const))(
    `%s: sees that an example is right, and takes nothing the parser refuses (seed ${SEED})`,
    (name, { body }) => {
      const good = { kind: name, ...EXAMPLE_BODIES[name] };
      const check = quickCheck(body);
      expect(check(good)).toBe(true);
      fc.assert(
        fc.property(spoilt(good), (value) => {
          if (check(value)) expect(accepts(body, value)).toBe(true);
        }),
        { seed: SEED, numRuns: 400 },
      );
    },
  );

  test(`takes no envelope that the parser refuses (seed ${SEED})`, () => {
    const plain = { id: '00000b-phonea00000', day: 'day-1', kind: 'take-logged', v: 1, at: 0, zone: -900 };
    const good = { ...plain, batch: plain.id, before: plain.id, seen: { phoneb: 4, phonec: 0 } };
    const check = quickCheck(envelope);
    expect([check(plain), check(good)]).toEqual([true, true]);
    fc.assert(
      fc.property(spoilt(good), (value) => {
        if (check(value)) expect(accepts(envelope, value)).toBe(true);
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  test('holds at each bound as the parser does', () => {
    const shapes: readonly z.ZodMiniType[] = [
      z.int().check(z.gte(1), z.lte(3)),
      z.number().check(z.gt(1), z.lt(3)),
      z.string().check(z.minLength(1), z.maxLength(3)),
      z.array(z.boolean()).check(z.minLength(1), z.maxLength(2)),
    ];
    const values = [
      0,
      1,
      1.5,
      3,
      4,
      Infinity,
      2 ** 53,
      '',
      'abc',
      'abcd',
      [],
      [true],
      [true, true, true],
      ['a', null],
    ];
    for (const shape of shapes)
      for (const value of values) expect(quickCheck(shape)(value)).toBe(accepts(shape, value));
  });

  test('leaves to the parser what it does not know, and what would change the value', () => {
    expect(quickCheck(z.date())(new Date(0))).toBe(false);
    expect(quickCheck(z._default(z.string(), 'x'))('y')).toBe(false);
    expect(quickCheck(z.strictObject({ a: z.string() }))({ a: 'b' })).toBe(false);
    expect(quickCheck(z.email())('someone@example.org')).toBe(false);
    expect(quickCheck(z.string().check(z.trim()))(' a')).toBe(false);
  });
});
