import { describe, expect, test } from 'vitest';
import { dateAt, nextDate, nextLabel } from '../../../src/commands/day/day-after.ts';

describe('the label of the next day', () => {
  test.each([
    ['Day 7', 'Day 8'],
    ['Day 9', 'Day 10'],
    ['Night 14', 'Night 15'],
    ['2nd unit 9', '2nd unit 10'],
    ['Day 12A', 'Day 13A'],
  ])('counts on: %s is followed by %s', (label, next) => {
    expect(nextLabel(label)).toBe(next);
  });

  test.each([
    ['Day 3 of 40', 'Day 4 of 40'],
    ['Day 3/40', 'Day 4/40'],
    ['3 of 40', '4 of 40'],
    ['2nd unit, day 3 of 40', '2nd unit, day 4 of 40'],
    ['Drehtag 12 von 31', 'Drehtag 13 von 31'],
    ['Day 12 (block 2)', 'Day 13 (block 2)'],
    ['DAY #5, episode 101', 'DAY #6, episode 101'],
  ])('counts the day and not what stands behind it: %s is followed by %s', (label, next) => {
    expect(nextLabel(label)).toBe(next);
  });

  test.each([
    ['Day 07', 'Day 08'],
    ['Day 09 of 40', 'Day 10 of 40'],
    ['D099', 'D100'],
    ['D999', 'D1000'],
  ])('is as wide as it was: %s is followed by %s', (label, next) => {
    expect(nextLabel(label)).toBe(next);
  });

  test.each([
    ['2026-05-04', '2026-05-05'],
    ['2026-05-31', '2026-06-01'],
    ['2026-12-31', '2027-01-01'],
    ['2028-02-28', '2028-02-29'],
    ['Mon 2026-05-04 Day 3 of 40', 'Mon 2026-05-05 Day 4 of 40'],
    ['2026-05-04 unit 2', '2026-05-05 unit 2'],
  ])('has the next date: %s is followed by %s', (label, next) => {
    expect(nextLabel(label)).toBe(next);
  });

  test.each([
    'Pilot',
    '',
    '04/05/2026',
    '4.5.2026',
    '31 May 2026',
    'May 31, 2026',
    '2026-02-30',
    '1'.repeat(200),
  ])('stays where it cannot be counted on: %s', (label) => {
    expect(nextLabel(label)).toBe(label);
  });

  test('is never longer than a label may be', () => {
    const label = `${'x'.repeat(199)}9`;
    expect(nextLabel(label)).toBe(label);
  });
});

test('the date on a clock is that of its own place', () => {
  expect(dateAt(Date.UTC(2026, 4, 4, 23), 120)).toBe('2026-05-05');
  expect(dateAt(Date.UTC(2026, 4, 4, 2), -300)).toBe('2026-05-03');
});

test('there is no date after what is none, nor after the last', () => {
  for (const date of ['', 'soon', '2026-02-30', '2026-13-01', '9999-12-31'])
    expect([date, nextDate(date)]).toEqual([date, undefined]);
});
