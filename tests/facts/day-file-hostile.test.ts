import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { foldDay } from '../../src/day/fold.ts';
import { readDayFile, writeDayFile } from '../../src/facts/day-file.ts';
import type { DayFile } from '../../src/facts/day-file-facts.ts';
import type { Envelope } from '../../src/facts/envelope.ts';
import { readFact } from '../../src/facts/fact.ts';
import { mergeFacts } from '../../src/facts/merge-facts.ts';
import { readDayFileLeniently } from '../../src/facts/salvage-day-file.ts';
import { DAY, everyKind, sealed } from './day-file-samples.ts';

const FACTS = everyKind();
const KNOWN: readonly Envelope[] = Object.freeze(FACTS.slice(0, 12));
const FILE = writeDayFile(DAY, 'Day 4', FACTS.slice(4, 14));
const json = (value: unknown): string => JSON.stringify(value);

const hostileValue = fc.oneof(
  fc.constantFrom<unknown>(null, '', '__proto__', '<script>alert(1)</script>', -1, 1e308, [], {}, true, 0.5),
  fc.constantFrom<unknown>(
    '00000a-phonea00000',
    'zzzzzz-phonea00000',
    DAY,
    'day-2',
    '=1+1',
    '\u202e',
    '\ud800',
  ),
  fc.jsonValue({ maxDepth: 3 }),
);
const HOSTILE_KEYS = [
  '__proto__',
  'constructor',
  'unknown',
  'before',
  'batch',
  'seen',
  'kind',
  'v',
  'fields',
  'toString',
];

type Place = [owner: Record<string, unknown>, key: string];

const placesIn = (value: unknown): Place[] =>
  typeof value === 'object' && value !== null
    ? Object.keys(value).flatMap((key) => [
        [value as Record<string, unknown>, key] as Place,
        ...placesIn((value as Record<string, unknown>)[key]),
      ])
    : [];

const put = (owner: object, key: string, value: unknown): unknown =>
  Object.defineProperty(owner, key, { value, enumerable: true, configurable: true, writable: true });

/** One value somewhere in one fact replaced, taken out or added. */
const change = fc.record({
  fact: fc.nat(),
  place: fc.nat(),
  how: fc.nat(5),
  key: fc.nat(),
  value: hostileValue,
});
/** Whole files, seal and all, of facts with such changes. */
const wellSealed = fc
  .tuple(fc.nat(FACTS.length - 4), fc.array(change, { minLength: 1, maxLength: 3 }))
  .map(([from, changes]) => {
    const facts: unknown[] = structuredClone(FACTS.slice(from, from + 4));
    for (const { fact, place, how, key, value } of changes) {
      const at = facts[fact % facts.length] as object;
      const places = placesIn(at);
      const [owner, name] = places[place % places.length]!;
      if (how === 0) delete owner[name];
      else if (how === 1) put(owner, HOSTILE_KEYS[key % HOSTILE_KEYS.length]!, value);
      else if (how === 2) facts.push({ ...at, [name]: value });
      else put(owner, name, value);
    }
    return sealed(facts.map((fact) => JSON.stringify(fact)));
  });

/** A file damaged as text: pieces replaced, repeated, moved or cut. */
const damaged = fc
  .array(
    fc.record({
      at: fc.nat(FILE.length),
      length: fc.nat(200),
      to: fc.nat(FILE.length),
      how: fc.nat(3),
      noise: fc.string(),
    }),
    {
      minLength: 1,
      maxLength: 4,
    },
  )
  .map((changes) =>
    changes.reduce((text, { at, length, to, how, noise }) => {
      const piece = text.slice(at, at + length);
      if (how === 0) return text.slice(0, at) + noise + text.slice(at + noise.length);
      if (how === 1) return text.slice(0, at) + text.slice(at + length);
      if (how === 2) return text.slice(0, to) + piece + text.slice(to);
      return text.slice(0, at + length);
    }, FILE),
  );

/** What does not hold of a text that must hold of any: what comes out is whole and fit for a journal. */
function wrongWith(text: string): string[] {
  const strict = readDayFile(text);
  const lenient = readDayFileLeniently(text);
  const wrong = [strict, lenient].flatMap((read) =>
    read.ok ? wrongInFile(read.value) : /^[a-z]+(-[a-z]+)+$/.test(read.problem.code) ? [] : ['no code'],
  );
  const alike = !strict.ok || (lenient.ok && json(lenient.value.stored) === json(strict.value.stored));
  return alike ? wrong : [...wrong, 'the lenient reader reads less'];
}

function wrongInFile({ day, facts, stored }: DayFile): string[] {
  foldDay(day, facts);
  const merged = mergeFacts(KNOWN, stored);
  const counted = merged.ok ? merged.value.fresh.length + merged.value.same : stored.length;
  const read = stored.map((fact) => readFact(fact));
  const holds: Record<string, boolean> = {
    'stored and lifted facts agree': json(read) === json(facts.map((value) => ({ ok: true, value }))),
    'all facts are of the day': facts.every((fact) => fact.day === day),
    'no id comes twice': new Set(stored.map(({ id }) => id)).size === stored.length,
    'merging counts all': counted === stored.length,
  };
  return Object.keys(holds).filter((name) => !holds[name]);
}

const taken = (arbitrary: fc.Arbitrary<string>, seed: number, numRuns: number) => {
  let accepted = 0;
  fc.assert(
    fc.property(arbitrary, (text) => {
      expect(wrongWith(text)).toEqual([]);
      accepted += Number(readDayFile(text).ok);
    }),
    { seed, numRuns },
  );
  return accepted;
};

describe('hostile and damaged day files never throw and are never half taken', () => {
  test('3,000 files with a right seal and wrong values (seed 21)', () => {
    const accepted = taken(wellSealed, 21, 3000);
    expect(accepted).toBeGreaterThan(150);
    expect(accepted).toBeLessThan(2700);
  }, 60_000);

  test('2,500 files damaged as text (seed 22)', () => {
    expect(taken(damaged, 22, 2500)).toBeLessThan(250);
  }, 60_000);

  test('500 texts that never were a file (seed 23)', () => {
    expect(taken(fc.string({ unit: 'binary', maxLength: 300 }), 23, 500)).toBe(0);
  }, 60_000);

  test('nothing reached the prototype of everything', () => {
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect(Object.getOwnPropertyNames(Object.prototype)).toHaveLength(12);
  });
});
