import fc from 'fast-check';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { DAY, everyKind, sealed } from './day-file-samples.ts';

const FACTS = everyKind();
const FILE = writeDayFile(DAY, 'Day 4', FACTS.slice(4, 14));

export const hostileValue = fc.oneof(
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
export const HOSTILE_KEYS = [
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
export const wellSealed = fc
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

/** Whole files that nothing happened to: what refuses the others must let these in. */
export const unharmed = fc
  .nat(FACTS.length - 4)
  .map((from) => sealed(FACTS.slice(from, from + 4).map((fact) => JSON.stringify(fact))));

/** A file damaged as text: pieces replaced, repeated, moved or cut. */
export const damaged = fc
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
