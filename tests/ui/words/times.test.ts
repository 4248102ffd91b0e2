import { expect, test } from 'vitest';
import { clockTime } from '../../../src/ui/words/times.ts';

test.each([
  ['2026-10-07T19:32:59Z', 120, '21:32'],
  ['2026-10-07T23:59:00Z', 345, '05:44'],
  ['2026-10-07T02:10:00Z', -210, '22:40'],
  ['1970-01-01T00:10:00Z', -60, '23:10'],
])('%s, said %i minutes east of UTC, was %s there', (instant, zone, shown) => {
  expect(clockTime(Date.parse(instant), zone)).toBe(shown);
});
