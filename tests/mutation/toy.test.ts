import { expect, test } from 'vitest';
import { wholeHours } from './toy.ts';

test('counts whole hours only', () => {
  expect(wholeHours(10, 3)).toBe(3);
  expect(wholeHours(9, 3)).toBe(3);
  expect(wholeHours(10, 0)).toBe(0);
});
