import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { diceOf } from '../../sample-days/dice.ts';
import { generateDay, generateSeason, leastFacts } from '../../sample-days/generate.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { takesInOrder } from '../../src/day/takes.ts';
import { readDayFile, writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { readFact } from '../../src/facts/fact.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';

const USUAL = { seed: 7, takes: 90, tracks: 16, performers: 12, facts: 500 };
const sizes = fc.record({
  seed: fc.integer(),
  takes: fc.integer({ min: 1, max: 40 }),
  tracks: fc.integer({ min: 2, max: 20 }),
  performers: fc.integer({ min: 0, max: 15 }),
});

describe('a generated day', () => {
  test('has exactly as many facts, takes, tracks and performers as were asked for (seed 7)', () => {
    const { day, facts } = generateDay(USUAL);
    const folded = foldDay(day, facts);
    expect(facts.length).toBe(500);
    expect(takesInOrder(folded).length).toBe(90);
    expect(folded.rig.tracks.length).toBe(16);
    expect([...folded.voices.values()].filter(({ kind }) => kind === 'performer').length).toBe(12);
  });

  test('is the same for the same seed, and another for another', () => {
    expect(generateDay(USUAL)).toEqual(generateDay(USUAL));
    expect(generateDay({ ...USUAL, seed: 8 })).not.toEqual(generateDay(USUAL));
  });

  test('holds only facts that can be read, at any size (fast-check seed 42)', () => {
    fc.assert(
      fc.property(sizes, (size) => {
        const { facts } = generateDay(size);
        expect(facts.map(readFact)).toEqual(facts.map((value) => ({ ok: true, value })));
      }),
      { seed: 42, numRuns: 30 },
    );
  });

  test('survives its day file and gives a report, at any size (fast-check seed 43)', () => {
    fc.assert(
      fc.property(sizes, (size) => {
        const { day, title, facts } = generateDay(size);
        const read = readDayFile(writeDayFile(day, title, facts));
        expect(read.ok && read.value.facts).toEqual(facts);
        expect(reportText(reportOf(foldDay(day, facts)))).toContain('SOUND REPORT');
      }),
      { seed: 43, numRuns: 20 },
    );
  });

  test('without corrections, leaves every fact where it was said (seed 7)', () => {
    const { facts } = generateDay({ ...USUAL, corrections: false });
    const placing = facts.filter(
      ({ kind, before }) => before || kind === 'fact-moved' || kind === 'fact-retracted',
    );
    expect(placing).toEqual([]);
    expect(generateDay(USUAL).facts.some(({ kind }) => kind === 'fact-retracted')).toBe(true);
  });

  test('cannot be smaller than its rig, its cast and its takes', () => {
    const least = leastFacts(USUAL);
    expect(generateDay({ ...USUAL, facts: least }).facts.length).toBe(least);
    expect(() => generateDay({ ...USUAL, facts: least - 1 })).toThrow(`at least ${least} facts`);
    expect(() => generateDay({ ...USUAL, tracks: 1 })).toThrow('tracks: 2 to 400');
  });
});

test('a season has 120 days on 120 dates, and no two of its facts share an id (seed 1)', () => {
  const season = [...generateSeason({ seed: 1, takes: 3, tracks: 4, performers: 2 })];
  const ids = season.flatMap(({ facts }) => facts.map(({ id }) => id));
  expect(new Set(season.map(({ day }) => day)).size).toBe(120);
  expect(new Set(season.map(({ day, facts }) => foldDay(day, facts).header.date)).size).toBe(120);
  expect(new Set(ids).size).toBe(ids.length);
  expect(season.at(-1)!.title).toBe('Generated Day 120');
});

test('dice fall evenly enough (seed 5)', () => {
  const dice = diceOf(5);
  const counts = [0, 0, 0, 0, 0, 0];
  for (let roll = 0; roll < 6000; roll += 1) counts[dice.below(6)]! += 1;
  expect(Math.min(...counts)).toBeGreaterThan(900);
  expect(Math.max(...counts)).toBeLessThan(1100);
});
