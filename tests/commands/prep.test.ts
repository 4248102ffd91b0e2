import { describe, expect, test } from 'vitest';
import type { CommandResult } from '../../src/commands/command.ts';
import { readMetres, readNumber, readNumbers } from '../../src/commands/typed-number.ts';
import { describeLeads, describeRun, putOnSnake } from '../../src/commands/upkeep/describe-runs.ts';
import {
  addDevice,
  describeCard,
  describeDevices,
  freshCells,
  jamDevices,
} from '../../src/commands/upkeep/keep-up.ts';
import {
  describeBand,
  describeCarrier,
  markOccupied,
  setFrequencies,
  setGuards,
  switchTransmitters,
} from '../../src/commands/upkeep/plan-radio.ts';
import { planShift } from '../../src/commands/upkeep/plan-shift.ts';
import { nearestMs, nextMs, readClockTime } from '../../src/commands/upkeep/shift-times.ts';
import { readFact } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';
import { MORNING, speaker } from '../day/say.ts';
import { SMALL_RIG } from '../day/small-rig.ts';

const HOUR = 3_600_000;
const NOW = { atMs: MORNING + 3 * HOUR, zone: 120 };
const phone = speaker();
phone.say(...SMALL_RIG);
const day = phone.day();

const codeOf = (said: CommandResult): string => (said.ok ? 'ok' : said.problem.code);
/** What a command said, which must also be fit to be kept. */
function saidBy(said: CommandResult) {
  if (!said.ok) throw new Error(said.problem.code);
  const ids = idSource('phonea00000');
  for (const fact of stampFacts(said.value, { day: 'd', at: NOW.atMs, zone: 0, nextId: ids.next }))
    expect(readFact(fact).ok).toBe(true);
  return said.value;
}

describe('radio', () => {
  test('a whole set of frequencies is one action', () => {
    const tunings = [
      { transmitter: 'A1', khz: 470_100 },
      { transmitter: 'A2', khz: null },
    ];
    expect(saidBy(setFrequencies(day, tunings))).toEqual([
      { kind: 'part-described', part: 'A1', fields: { khz: 470_100 } },
      { kind: 'part-described', part: 'A2', fields: { khz: null } },
    ]);
  });

  test.each([
    [0, 'frequency-not-positive'],
    [-470_100, 'frequency-not-positive'],
    [470.1, 'frequency-not-whole'],
    [Number.NaN, 'frequency-not-whole'],
    [999, 'frequency-too-low'],
    [470_100_000_000, 'frequency-too-high'],
    [470_100, 'ok'],
  ])('%d kHz: %s', (khz, code) => {
    expect(codeOf(setFrequencies(day, [{ transmitter: 'A1', khz }]))).toBe(code);
  });

  test('only transmitters have frequencies, and something must be chosen', () => {
    expect(codeOf(setFrequencies(day, [{ transmitter: 'in1', khz: 470_100 }]))).toBe('not-on-this-day');
    expect(codeOf(setFrequencies(day, []))).toBe('nothing-chosen');
    expect(codeOf(switchTransmitters(day, ['in1'], true))).toBe('not-on-this-day');
    expect(saidBy(switchTransmitters(day, ['A1'], false))).toHaveLength(1);
  });

  test.each([-1, 10_001, 0.5, Number.POSITIVE_INFINITY])('a guard of %d kHz is refused', (khz) => {
    expect(codeOf(setGuards({ carrierKhz: khz }))).toBe('guard-unusable');
  });

  test('another carrier needs a name and a frequency', () => {
    expect(codeOf(describeCarrier(day, 'c', { khz: 455_500 }))).toBe('name-empty');
    expect(codeOf(describeCarrier(day, 'c', { name: 'Comms' }))).toBe('frequency-empty');
    expect(codeOf(describeCarrier(day, 'c', { name: 'x'.repeat(201), khz: 455_500 }))).toBe('name-too-long');
    saidBy(describeCarrier(day, 'c', { name: 'Comms', khz: 455_500, spacingKhz: 250 }));
  });

  test.each([
    [{}, 'band-without-ends'],
    [{ use: 'tunable', fromKhz: 480_000, toKhz: 470_000 }, 'range-upside-down'],
    [{ use: 'tunable', fromKhz: 470_000, toKhz: 4_000_000 }, 'range-too-wide'],
    [{ use: 'tunable', fromKhz: 470_000, toKhz: 480_000, rasterKhz: 0 }, 'raster-unusable'],
    [{ use: 'tunable', fromKhz: 470_000, toKhz: 480_000, rasterKhz: 12.5 }, 'raster-unusable'],
    [{ use: 'occupied', fromKhz: 470_000, toKhz: 480_000 }, 'ok'],
  ] as const)('a stretch %j: %s', (fields, code) => {
    expect(codeOf(describeBand(day, 'b', fields))).toBe(code);
  });

  test('a TV channel is marked and freed by a tap each', () => {
    const block = { name: 'TV 24', fromKhz: 530_000, toKhz: 536_000 };
    const other = speaker();
    other.say(...saidBy(markOccupied(day, 'tv-us-24', block, true)));
    expect(other.day().upkeep.bands.get('tv-us-24')).toMatchObject({ name: 'TV 24', struck: false });
    other.say(...saidBy(markOccupied(other.day(), 'tv-us-24', block, false)));
    expect(other.day().upkeep.bands.get('tv-us-24')?.struck).toBe(true);
    expect(codeOf(markOccupied(day, 'tv-us-25', block, false))).toBe('not-on-this-day');
  });
});

describe('cells and timecode', () => {
  test('fresh cells are one fact for as many packs as were tapped', () => {
    expect(saidBy(freshCells(day, ['A1', 'A2'], NOW))).toEqual([
      { kind: 'cells-changed', devices: ['A1', 'A2'] },
    ]);
    expect(saidBy(freshCells(day, ['A1'], NOW, { minutesAgo: 30 }))).toEqual([
      { kind: 'cells-changed', devices: ['A1'], atMs: NOW.atMs - 1_800_000 },
    ]);
  });

  test('a jam is from the recorder unless said, and never from itself', () => {
    const [jam] = saidBy(jamDevices(day, ['A1'], NOW));
    expect(jam).toMatchObject({ from: 'recorder' });
    expect(codeOf(jamDevices(day, ['A1', 'recorder'], NOW))).toBe('jam-from-itself');
    expect(codeOf(jamDevices(day, ['slate'], NOW))).toBe('not-on-this-day');
    expect(codeOf(jamDevices(day, ['A1'], NOW, 'nobody'))).toBe('not-on-this-day');
    expect(codeOf(freshCells(day, ['A1'], NOW, { minutesAgo: Number.NaN }))).toBe('quantity-not-finite');
  });

  test.each([
    [{ runtimeHours: 0 }, 'quantity-out-of-range'],
    [{ runtimeHours: 5000 }, 'quantity-out-of-range'],
    [{ ppm: -1 }, 'quantity-out-of-range'],
    [{ ppm: Number.POSITIVE_INFINITY }, 'quantity-not-finite'],
    [{ runtimeHours: null, ppm: 0 }, 'ok'],
  ])('a device with %j: %s', (fields, code) => {
    expect(codeOf(describeDevices(day, ['A1'], fields))).toBe(code);
    expect(codeOf(addDevice('d', { name: 'Slate', ...fields }))).toBe(code);
  });

  test('a device needs a name', () => {
    expect(codeOf(addDevice('d', { name: '  ' }))).toBe('name-empty');
  });

  test.each([
    [{}, 'card-without-size'],
    [{ bytes: 0 }, 'quantity-out-of-range'],
    [{ bytes: 64e9, usedBytes: 65e9 }, 'card-over-full'],
    [{ bytes: 64e9, tracks: 0 }, 'quantity-out-of-range'],
    [{ bytes: 64e9, copies: 1.5 }, 'quantity-not-whole'],
    [{ bytes: 64e9, usedBytes: 0, tracks: null }, 'ok'],
  ])('a card with %j: %s', (fields, code) => {
    expect(codeOf(describeCard(day, 'k', fields))).toBe(code);
  });
});

describe('cables', () => {
  test.each([
    [{}, 'run-without-type'],
    [{ type: 'network', metres: 0 }, 'quantity-out-of-range'],
    [{ type: 'network', metres: 10_000 }, 'quantity-out-of-range'],
    [{ type: 'network', watts: Number.POSITIVE_INFINITY }, 'quantity-not-finite'],
    [{ type: 'network', powerClass: 9 }, 'quantity-out-of-range'],
    [{ type: 'network', metres: 60, watts: null }, 'ok'],
  ] as const)('a run with %j: %s', (fields, code) => {
    expect(codeOf(describeRun(day, 'r', fields))).toBe(code);
  });

  test('leads go on a snake in order, no further than its eight circuits', () => {
    expect(saidBy(putOnSnake(['l1', 'l2'], 'A', 'aes3', 7))).toMatchObject([
      {
        leads: [
          { lead: 'l1', fields: { circuit: 7 } },
          { lead: 'l2', fields: { circuit: 8 } },
        ],
      },
    ]);
    expect(codeOf(putOnSnake(['l1', 'l2'], 'A', 'aes3', 8))).toBe('snake-too-short');
    expect(codeOf(putOnSnake([], 'A', 'aes3'))).toBe('nothing-chosen');
    expect(codeOf(describeLeads([], {}))).toBe('nothing-chosen');
  });
});

describe('the hours of the day', () => {
  test.each([
    ['13:30', 810],
    ['13.30', 810],
    ['1330', 810],
    ['730', 450],
    ['7', 420],
    ['', null],
  ])('%j is read as %j minutes', (typed, minutes) => {
    expect(readClockTime(typed)).toEqual({ ok: true, value: minutes });
  });

  test.each(['24:00', '12:60', 'noon', '123456', '-1'])('%j is no time of day', (typed) => {
    expect(readClockTime(typed)).toMatchObject({ ok: false, problem: { code: 'clock-time-unread' } });
  });

  // 7 October 2026, 07:00 UTC is 09:00 two hours east.
  test.each([
    ['09:00 now, 07:00', MORNING, 7 * 60, -2],
    ['20:00 the evening before, 07:00', MORNING - 13 * HOUR, 7 * 60, -2],
    ['23:00, 21:00', MORNING + 14 * HOUR, 21 * 60, 12],
  ])('the nearest to %s', (_, atMs, minutes, hoursFromMorning) => {
    expect(nearestMs(minutes, { atMs, zone: 120 })).toBe(MORNING + hoursFromMorning * HOUR);
  });

  test('the next one may be tomorrow, in a zone with a half hour too', () => {
    expect(nextMs(9 * 60, MORNING, 120)).toBe(MORNING);
    expect(nextMs(9 * 60 - 1, MORNING, 120)).toBe(MORNING + 24 * HOUR - 60_000);
    expect(nextMs(12 * 60 + 30, MORNING, 330)).toBe(MORNING);
  });

  test('a night wraps on the next day', () => {
    const evening = { atMs: MORNING + 9 * HOUR, zone: 120 };
    expect(saidBy(planShift(day, { call: '17:00', meal: '23:30', wrap: '5' }, evening))).toEqual([
      {
        kind: 'shift-planned',
        shift: {
          callAtMs: MORNING + 8 * HOUR,
          mealAtMs: MORNING + 14.5 * HOUR,
          wrapAtMs: MORNING + 20 * HOUR,
        },
      },
    ]);
    expect(codeOf(planShift(day, { call: '', meal: 'late', wrap: '' }, evening))).toBe('clock-time-unread');
  });
});

describe('figures as typed', () => {
  test.each([
    ['76,2', 76.2],
    [' 5.5 ', 5.5],
    ['.5', 0.5],
    ['-3', -3],
    ['', null],
  ])('%j is %j', (typed, value) => {
    expect(readNumber(typed, 'metres')).toEqual({ ok: true, value });
  });

  test.each(['1e9', 'Infinity', 'NaN', '1.2.3', '1,000,000', 'six'])('%j is no number', (typed) => {
    expect(readNumber(typed, 'metres')).toEqual({
      ok: false,
      problem: { code: 'number-unread', field: 'metres', typed },
    });
  });

  test.each([
    ['60', 60],
    ['60 m', 60],
    ['250 ft', 76.2],
    ["300'", 91.44],
    ['', null],
  ])('%j is %j metres', (typed, metres) => {
    expect(readMetres(typed)).toEqual({ ok: true, value: metres });
  });

  test('the first of several that cannot be read is named', () => {
    expect(readNumbers({ a: '1', b: 'x' })).toMatchObject({ ok: false, problem: { field: 'b' } });
    expect(readNumbers({ a: '1', b: '' })).toEqual({ ok: true, value: { a: 1, b: null } });
  });
});
