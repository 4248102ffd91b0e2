import { describe, expect, test } from 'vitest';
import { framesPerDay, nearestRate, RATES, type RateId, rateOf } from '../../src/time/rate.ts';
import { framesToSamples } from '../../src/time/samples.ts';

// Nominal rates: scope of SMPTE ST 12-1:2014. Exact rates with 1000/1001 as the standard has them; the other columns
// follow from the rate by exact division. Drop-frame at true 30: common practice, from memory.
// Columns: rate, exact, label base, samples per frame at 48000, 48048 and 96000, frames per day.
const TABLE: readonly (readonly [RateId, string, number, number, number, number, number])[] = [
  ['23.976', '24000/1001', 24, 2002, 2004.002, 4004, 2_073_600],
  ['24', '24/1', 24, 2000, 2002, 4000, 2_073_600],
  ['25', '25/1', 25, 1920, 1921.92, 3840, 2_160_000],
  ['29.97', '30000/1001', 30, 1601.6, 1603.2016, 3203.2, 2_592_000],
  ['29.97DF', '30000/1001', 30, 1601.6, 1603.2016, 3203.2, 2_589_408],
  ['30', '30/1', 30, 1600, 1601.6, 3200, 2_592_000],
  ['30DF', '30/1', 30, 1600, 1601.6, 3200, 2_589_408],
  ['47.952', '48000/1001', 48, 1001, 1002.001, 2002, 4_147_200],
  ['48', '48/1', 48, 1000, 1001, 2000, 4_147_200],
  ['50', '50/1', 50, 960, 960.96, 1920, 4_320_000],
  ['59.94', '60000/1001', 60, 800.8, 801.6008, 1601.6, 5_184_000],
  ['59.94DF', '60000/1001', 60, 800.8, 801.6008, 1601.6, 5_178_816],
  ['60', '60/1', 60, 800, 800.8, 1600, 5_184_000],
];

describe('the rates of ST 12-1', () => {
  test.each(TABLE)('%s is exactly %s with labels to base %i', (id, exact, base) => {
    const rate = rateOf(id);
    expect(`${rate.num}/${rate.den}`).toBe(exact);
    expect(rate.base).toBe(base);
    expect(rate.dropped).toBe(id.endsWith('DF') ? base / 15 : 0);
  });

  test.each(TABLE)('%s has the stated samples per frame', (id, _exact, _base, at48000, at48048, at96000) => {
    const tenThousandFrames = (sampleRate: number) => framesToSamples(10_000, sampleRate, id);
    const whole = (perFrame: number) => ({ samples: Math.round(perFrame * 10_000), exact: true });
    expect(tenThousandFrames(48_000)).toEqual(whole(at48000));
    expect(tenThousandFrames(48_048)).toEqual(whole(at48048));
    expect(tenThousandFrames(96_000)).toEqual(whole(at96000));
  });

  test.each(TABLE)('%s has the stated frames in a day', (id, _exact, _base, _a, _b, _c, perDay) => {
    expect(framesPerDay(id)).toBe(perDay);
  });

  test('24 at 48048 and 23.976 at 48000 have equally many samples in a frame, and so have 30 and 29.97', () => {
    expect(framesToSamples(5, 48_048, '24')).toEqual(framesToSamples(5, 48_000, '23.976'));
    expect(framesToSamples(5, 48_048, '30')).toEqual(framesToSamples(5, 48_000, '29.97'));
  });

  test('the table holds every rate there is', () => {
    expect(RATES.map(({ id }) => id)).toEqual(TABLE.map(([id]) => id));
  });

  test('an id that is no rate is a bug and throws', () => {
    expect(() => rateOf('29' as RateId)).toThrow(RangeError);
  });
});

// Spellings met in files: iXML 3.01 (n/d), and the tests of public readers of it. The nearest rate within 0.01 is ours.
const WRITTEN: readonly (readonly [string, boolean, RateId])[] = [
  ['24/1', false, '24'],
  ['25/1', false, '25'],
  ['30/1', false, '30'],
  ['30/1', true, '30DF'],
  ['24000/1001', false, '23.976'],
  ['30000/1001', false, '29.97'],
  ['30000/1001', true, '29.97DF'],
  ['60000/1001', true, '59.94DF'],
  ['48000/1001', false, '47.952'],
  ['24000/1000', false, '24'],
  ['23.976', false, '23.976'],
  ['23.98', false, '23.976'],
  ['23,976', false, '23.976'],
  ['23.976023976024', false, '23.976'],
  ['29.97002997', false, '29.97'],
  ['29.98', false, '29.97'],
  ['24.01', false, '24'],
  ['47.95', false, '47.952'],
  ['25', false, '25'],
  ['2997ND', false, '29.97'],
  ['2997ND', true, '29.97'],
  ['2997DF', false, '29.97DF'],
  ['2398', false, '23.976'],
  ['23976', false, '23.976'],
  ['023.976-ND', false, '23.976'],
  [' 29.97 NDF ', false, '29.97'],
  ['59.94 df', false, '59.94DF'],
  ['25 fps', false, '25'],
  ['25fps', true, '25'],
  ['24/1', true, '24'],
];

describe('a written rate', () => {
  test.each(WRITTEN)('%j with drop-frame %s is read as %s', (text, dropFrame, id) => {
    expect(nearestRate(text, dropFrame)).toBe(id);
  });

  test.each(RATES.map(({ id }) => id))('%s reads back as itself', (id) => {
    expect(nearestRate(id)).toBe(id);
  });

  test.each([
    '',
    '0',
    '0/0',
    '25/0',
    '1/25',
    '26',
    '23.96',
    '24.0101',
    '29.985',
    '240000',
    '29.5',
    '240',
    '120',
    '25/1/1',
    '2.5/0.1',
  ])('%j is no rate', (text) => expect(nearestRate(text)).toBeUndefined());

  test.each([
    'NaN',
    'Infinity',
    '1e2',
    '-25',
    'DF',
    '=25',
    '<25>',
    '9'.repeat(400),
    '25'.padStart(5000, ' '),
  ])('%.12j is no rate', (text) => expect(nearestRate(text)).toBeUndefined());
});
