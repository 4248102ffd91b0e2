import { describe, expect, test } from 'vitest';
import { isInWords, slatesOnLine, wordsOfTake } from '../../../src/day/answers/found-on-line.ts';
import { slateText } from '../../../src/day/slate.ts';
import { smallDay } from '../../report/report-day.ts';

const { phone, first, second, wild } = smallDay();
const day = phone.day();
const finds = (take: string, typed: string): boolean =>
  isInWords(wordsOfTake(day, day.takes.get(take)!), typed);

describe('finding on the line', () => {
  test('finds a take by its slate, its notes and the people on its tracks', () => {
    expect(finds(second, '24a/2')).toBe(true);
    expect(finds(second, 'plane')).toBe(true);
    expect(finds(second, 'RUSTLE')).toBe(true);
    expect(finds(second, 'ines')).toBe(true);
    expect(finds(first, 'plane')).toBe(false);
  });

  test('finds somebody only on the takes they are on', () => {
    expect(finds(first, 'Tomas')).toBe(false);
    expect(finds(wild, 'Tomas')).toBe(true);
  });

  test('nothing typed finds everything, and accents do not matter', () => {
    expect(finds(first, '  ')).toBe(true);
    expect(isInWords(['Åse and Rozália'], 'ase AND rozalia')).toBe(true);
    expect(isInWords(['Ксенија'], 'ксен')).toBe(true);
  });

  test('lists every slate once, the last first; wild tracks are no slates', () => {
    const slates = slatesOnLine(day);
    expect(slates.map(({ slate }) => slateText(slate))).toEqual(['24C', '24B', '24A']);
    expect(slates.at(-1)!.take).toBe(second);
  });
});
