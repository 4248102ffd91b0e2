import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dateUserBits, userBitsReadings } from '../../../src/upkeep/due/user-bits.ts';
import { codeOf, unwrap } from '../unwrap.ts';

describe('user bits', () => {
  // Date form of SMPTE ST 309, read second hand; group order of SMPTE ST 12-1.
  test('for 7 October 2026 with zone code 00 print as 00261007', () => {
    expect(unwrap(dateUserBits({ year: 2026, month: 10, day: 7 }))).toBe('00261007');
  });

  // A value of this order stands in files in the field; the order is no standard's.
  test('in another order are offered as every date they could be', () => {
    expect(unwrap(userBitsReadings('$12311801'))).toEqual([
      { form: 'month-day-year', year: 18, month: 12, day: 31, rest: '01' },
    ]);
    expect(unwrap(userBitsReadings('07102601')).map(({ form }) => form)).toEqual([
      'year-month-day',
      'month-day-year',
      'day-month-year',
    ]);
  });

  test('with letters are legal and read as no date', () => {
    expect(unwrap(userBitsReadings('de ad:be-ef'))).toEqual([]);
    expect(unwrap(userBitsReadings('12:31 18-01'))).toEqual(unwrap(userBitsReadings('12311801')));
  });

  test('of every valid date read back as that date (seed 309)', () => {
    const date = fc.date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true });
    fc.assert(
      fc.property(date, (moment) => {
        const [year, month, day] = [moment.getUTCFullYear(), moment.getUTCMonth() + 1, moment.getUTCDate()];
        const readings = unwrap(userBitsReadings(unwrap(dateUserBits({ year, month, day }, '0A'))));
        expect(readings[0]).toEqual({ form: 'st-309', year: year % 100, month, day, rest: '0A' });
      }),
      { seed: 309 },
    );
  });

  test('know the length of every month', () => {
    const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    for (const [at, day] of lengths.entries()) {
      expect(codeOf(dateUserBits({ year: 2031, month: at + 1, day }))).toBe('none');
      expect(codeOf(dateUserBits({ year: 2031, month: at + 1, day: day + 1 }))).toBe('not-a-date');
    }
  });

  test('refuse what is no date, no zone code and no user bits', () => {
    expect(codeOf(dateUserBits({ year: 2026, month: 2, day: 29 }))).toBe('not-a-date');
    expect(codeOf(dateUserBits({ year: 2024, month: 2, day: 29 }))).toBe('none');
    expect(codeOf(dateUserBits({ year: Number.NaN, month: 2, day: 1 }))).toBe('not-a-date');
    expect(codeOf(dateUserBits({ year: 2026, month: 1, day: 1 }, 'X0'))).toBe('not-a-zone-code');
    expect(codeOf(userBitsReadings('1234567'))).toBe('not-user-bits');
  });
});
