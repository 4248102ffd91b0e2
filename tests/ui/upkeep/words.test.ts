import { expect, test } from 'vitest';
import { clockOf, figureWords, framesWords, hoursWords } from '../../../src/ui/upkeep/words.ts';

test.each([
  [5, '5 h'],
  [2.0833, '2 h 05'],
  [0.5, '30 min'],
  [0.999, '1 h'],
  [-1, '0 min'],
])('%d hours are %s', (hours, words) => {
  expect(hoursWords(hours)).toBe(words);
});

test('a time of another day says which', () => {
  const now = Date.UTC(2026, 9, 7, 20);
  expect(clockOf(now, 120, now)).toBe('22:00');
  expect(clockOf(now + 3 * 3_600_000, 120, now)).toBe('01:00 tomorrow');
  expect(clockOf(now - 24 * 3_600_000, 120, now)).toBe('22:00 yesterday');
  expect(clockOf(now + 72 * 3_600_000, 120, now)).toBe('22:00, 3 days on');
});

test('figures carry no trailing noughts', () => {
  expect([figureWords(47.9, 1), figureWords(18, 1), figureWords(0.38, 2)]).toEqual(['47.9', '18', '0.38']);
  expect([framesWords(0.5), framesWords(12.34)]).toEqual(['0.50 frames', '12 frames']);
});
