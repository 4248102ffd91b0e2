import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { foldDay } from '../../src/day/fold/fold.ts';
import { readDayFile } from '../../src/facts/day-file/day-file.ts';
import type { DayFile } from '../../src/facts/day-file/day-file-facts.ts';
import { readDayFileLeniently } from '../../src/facts/day-file/salvage-day-file.ts';
import { readFact } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { mergeFacts } from '../../src/facts/merge-facts.ts';
import { everyKind } from './day-file-samples.ts';
import { damaged, wellSealed } from './hostile-day-files.ts';

const KNOWN: readonly Envelope[] = Object.freeze(everyKind().slice(0, 12));
const json = (value: unknown): string => JSON.stringify(value);

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
