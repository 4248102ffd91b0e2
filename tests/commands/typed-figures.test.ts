import { describe, expect, test } from 'vitest';
import { rateOfTake, readTypedTake, type TypedTake, typedFrom } from '../../src/commands/line/typed-take.ts';
import { readMetres, readNumber, readNumbers } from '../../src/commands/typed-number.ts';
import { planShift } from '../../src/commands/upkeep/plan-shift.ts';
import { nearestMs, nextMs, readClockTime } from '../../src/commands/upkeep/shift-times.ts';
import type { Result } from '../../src/shared/result.ts';
import { speaker } from '../day/say.ts';

const HOUR = 3_600_000;
const read = (result: Result<unknown>): unknown => (result.ok ? result.value : result.problem.code);

describe('figures', () => {
  test.each([
    ['', null],
    [' ', null],
    ['7', 7],
    [' 76,2 ', 76.2],
    ['76.', 76],
    ['.5', 0.5],
    ['-.5', -0.5],
    ['+3', 3],
    ['-12.25', -12.25],
    ['999999999999999', 999_999_999_999_999],
    ['1000000000000000', 'number-unread'],
    ['1e3', 'number-unread'],
    ['1,000,5', 'number-unread'],
    ['.', 'number-unread'],
    ['-', 'number-unread'],
    ['x7', 'number-unread'],
    ['7x', 'number-unread'],
  ])('%j is %s', (typed, value) => {
    expect(read(readNumber(typed, 'volts'))).toBe(value);
  });

  test('are all read, or the first that cannot be is named', () => {
    expect(readNumbers({ volts: '12', amps: '' })).toEqual({ ok: true, value: { volts: 12, amps: null } });
    expect(readNumbers({ volts: '12', amps: 'b', watts: 'c' })).toEqual({
      ok: false,
      problem: { code: 'number-unread', field: 'amps', typed: 'b' },
    });
  });
});

describe('lengths of cable', () => {
  test.each([
    ['60', 60],
    ['60 m', 60],
    ['60M', 60],
    ['1 metre', 1],
    ['60 metres', 60],
    ['60 meters', 60],
    // A foot is 0.3048 m exactly (international yard and pound agreement, 1959).
    ['250 ft', 76.2],
    ['250FT', 76.2],
    ['1 foot', 0.3048],
    ['3 feet', 0.9144],
    ["10'", 3.048],
    [' 0,5 ft ', 0.1524],
    ['ft', null],
    ['', null],
    ['60 yd', 'number-unread'],
    ['x ft', 'number-unread'],
  ])('%j is %s', (typed, value) => {
    expect(read(readMetres(typed))).toBe(value);
  });

  test('that cannot be read are told as typed', () => {
    expect(readMetres(' 6x ft ')).toEqual({
      ok: false,
      problem: { code: 'number-unread', field: 'metres', typed: ' 6x ft ' },
    });
  });
});

describe('times by the clock', () => {
  test.each([
    ['', null],
    ['7', 420],
    ['07', 420],
    ['7:', 420],
    ['7:05', 425],
    ['7.05', 425],
    ['7h05', 425],
    ['7 : 05', 425],
    ['705', 425],
    ['0705', 425],
    ['0', 0],
    ['00:00', 0],
    ['23:59', 1439],
    ['2359', 1439],
    ['24', 'clock-time-unread'],
    ['24:00', 'clock-time-unread'],
    ['23:60', 'clock-time-unread'],
    ['7:5', 'clock-time-unread'],
    ['7-05', 'clock-time-unread'],
    ['12345', 'clock-time-unread'],
  ])('%j is %s minutes after midnight', (typed, minutes) => {
    expect(read(readClockTime(typed))).toBe(minutes);
  });

  // 7 October 2026, midnight in a zone two hours east of UTC, and in one seven hours west.
  test.each([120, -420])('are of the day it is in the zone, %i minutes east', (zone) => {
    const midnight = Date.UTC(2026, 9, 7) - zone * 60_000;
    const at = (hours: number) => ({ atMs: midnight + hours * HOUR, zone });
    const nearest = (hours: number, now: number) => (nearestMs(hours * 60, at(now)) - midnight) / HOUR;
    expect(nearest(7, 9)).toBe(7);
    expect(nearest(7, 20)).toBe(31);
    expect(nearest(20, 7)).toBe(-4);
    // Of two that are twelve hours away the one that is still to come.
    expect([nearest(7, 18.999), nearest(7, 19)]).toEqual([7, 31]);
    expect([nearest(19, 7), nearest(19, 6.999)]).toEqual([19, -5]);

    const next = (hours: number, from: number) => (nextMs(hours * 60, at(from).atMs, zone) - midnight) / HOUR;
    expect([next(13, 12), next(13, 13), next(13, 13.001), next(0, 0), next(0, 1)]).toEqual([
      13, 13, 37, 0, 24,
    ]);
  });

  test('before 1970 are of their day too', () => {
    expect(nextMs(60, -HOUR, 0)).toBe(HOUR);
    expect(nextMs(60, -24 * HOUR, 0)).toBe(-23 * HOUR);
    expect(nextMs(60, -30 * HOUR, 0)).toBe(-23 * HOUR);
  });

  test('meal and wrap follow the call; without one a wrap is hours ahead or just past, and the meal before it', () => {
    const midnight = Date.UTC(2026, 9, 7);
    const plan = (call: string, meal: string, wrap: string) => {
      const said = planShift(speaker().day(), { call, meal, wrap }, { atMs: midnight + 10 * HOUR, zone: 0 });
      if (!said.ok) return said.problem;
      const { shift } = said.value[0] as never as { shift: Record<string, number | null> };
      return Object.values(shift).map((ms) => ms && (ms - midnight) / HOUR);
    };
    expect(plan('8', '13', '2')).toEqual([8, 13, 26]);
    expect(plan('8', '8', '7')).toEqual([8, 8, 31]);
    expect(plan('', '13', '20')).toEqual([null, 13, 20]);
    expect(plan('', '9', '8:59')).toEqual([null, -15, 8 + 59 / 60]);
    expect(plan('', '', '')).toEqual([null, null, null]);
    expect(plan('', '', '25')).toEqual({ code: 'clock-time-unread', typed: '25' });
    expect(plan('25', '', '')).toEqual({ code: 'clock-time-unread', typed: '25' });
  });
});

describe('a take as typed', () => {
  const SHOWED: TypedTake = {
    kind: 'take',
    style: 'lettered',
    slate: '24B',
    scene: '24',
    number: '3',
    start: '10:00:00:00',
    length: '0:10',
    file: '24BT3',
  };
  const typed = (more: Partial<TypedTake>, showed: Partial<TypedTake> = {}) =>
    readTypedTake({ ...SHOWED, ...showed, ...more }, { ...SHOWED, ...showed }, '25');

  test('says what was touched and nothing else', () => {
    expect(typed({})).toEqual({ ok: true, value: {} });
    expect(typed({ kind: 'pickup' })).toEqual({ ok: true, value: { kind: 'pickup' } });
    expect(typed({ scene: '25' })).toEqual({ ok: true, value: {} });
    expect(typed({ slate: '24C' })).toEqual({
      ok: true,
      value: { slate: { style: 'lettered', scene: '24', setup: 3 } },
    });
    expect(typed({ start: '10:00:00:01' })).toEqual({
      ok: true,
      value: { start: { frames: 900_001, rate: '25' } },
    });
    expect(typed({ length: ' ', start: '' })).toEqual({ ok: true, value: { start: null, length: null } });
  });

  test('has the scene of a numbered slate, and what style it is', () => {
    const numbered = { style: 'numbered', slate: '101', scene: '24' } as const;
    const slate = { style: 'numbered', number: 101 };
    expect(typed({ scene: '25' }, numbered)).toMatchObject({ value: { slate: { ...slate, scene: '25' } } });
    expect(typed({ style: 'numbered', slate: '101' })).toMatchObject({
      value: { slate: { ...slate, scene: '24' } },
    });
  });

  test('of a wild track keeps its slate, whatever stands there', () => {
    expect(typed({ kind: 'wild', slate: '99Z' })).toEqual({ ok: true, value: { kind: 'wild' } });
    expect(typed({ slate: '99Z' }, { kind: 'tone' })).toEqual({ ok: true, value: {} });
    expect(typed({ kind: 'take', slate: '99B' }, { kind: 'wild' })).toMatchObject({
      value: { kind: 'take', slate: { scene: '99' } },
    });
  });

  test.each([
    ['1', 1],
    [' 9999 ', 9999],
    ['0', 'take-number'],
    ['0000', 'take-number'],
    ['10000', 'take-number'],
    ['', 'take-number'],
    ['3a', 'take-number'],
  ])('number %j is %s', (number, value) => {
    const said = typed({ number });
    expect(said.ok ? said.value : said.problem).toEqual(
      typeof value === 'number' ? { number: value } : { code: value, typed: number },
    );
  });

  test('has a file of 200 characters at most, or none', () => {
    expect(typed({ file: ` ${'x'.repeat(200)} ` })).toEqual({ ok: true, value: { file: 'x'.repeat(200) } });
    expect(typed({ file: 'x'.repeat(201) })).toEqual({
      ok: false,
      problem: { code: 'file-name-too-long', longest: 200 },
    });
    expect(typed({ file: ' ' })).toEqual({ ok: true, value: { file: null } });
  });

  test('is typed at the rate of its own start, else of its length, else of the day', () => {
    const day = speaker().day();
    const at = (rate: string) => ({ frames: 1, rate }) as never;
    expect(rateOfTake(day, { start: at('24'), length: at('30') })).toBe('24');
    expect(rateOfTake(day, { start: null, length: at('30') })).toBe('30');
    expect(rateOfTake(day, {})).toBe(day.header.timecodeRate);
  });

  test('fills a form from a take, with nothing where nothing is known', () => {
    const slate = { style: 'lettered', scene: '24', setup: 2 } as const;
    expect(typedFrom({ kind: 'take', slate, number: 3 })).toEqual({
      ...SHOWED,
      start: '',
      length: '',
      file: '',
    });
  });
});
