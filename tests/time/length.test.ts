import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { formatLength, formatSeconds, parseLength } from '../../src/time/length.ts';
import { framesToMs } from '../../src/time/timecode.ts';
import { RATE_IDS } from './every-rate.ts';

const SEED = 19;
const LONGEST_S = 86_400;

const read = (typed: string, rate: (typeof RATE_IDS)[number]): number => {
  const length = parseLength(typed, rate);
  if (!length.ok) throw new Error(`${typed}: ${length.problem.code}`);
  return length.value;
};

describe('a length is read as it is printed', () => {
  test.each(RATE_IDS)('at %s, every second of a day', (rate) => {
    const every = fc.property(fc.integer({ min: 0, max: LONGEST_S }), (seconds) => {
      const printed = formatSeconds(seconds);
      expect(formatLength(read(printed, rate), rate)).toBe(printed);
    });
    fc.assert(every, { seed: SEED, numRuns: 2000 });
  });

  test.each(RATE_IDS)('at %s, whatever was recorded, within the half second that is not printed', (rate) => {
    const longest = (LONGEST_S * 1000) / (framesToMs(1_000_000, rate) / 1_000_000);
    const any = fc.property(fc.integer({ min: 0, max: Math.floor(longest) }), (frames) => {
      const printed = formatLength(frames, rate);
      const again = read(printed, rate);
      expect(formatLength(again, rate)).toBe(printed);
      expect(Math.abs(framesToMs(again, rate) - framesToMs(frames, rate))).toBeLessThanOrEqual(500 + 21);
    });
    fc.assert(any, { seed: SEED, numRuns: 2000 });
  });

  test.each([
    ['10:00', '23.976', 14_386],
    ['1:02:10', '25', 93_250],
    ['1:52', '25', 2800],
    ['00:01:52', '25', 2800],
    ['1.52', '25', 2800],
    ['90:00', '24', 129_600],
    ['45', '25', 1125],
    ['0', '25', 0],
    ['24:00:00', '29.97DF', 2_589_411],
  ] as const)('%s at %s is %i frames', (typed, rate, frames) => {
    expect(parseLength(typed, rate)).toEqual({ ok: true, value: frames });
  });

  test.each([
    ['', 'length-unread'],
    ['abc', 'length-unread'],
    ['-5', 'length-unread'],
    ['1:75', 'length-unread'],
    ['1:60:00', 'length-unread'],
    ['1:052', 'length-unread'],
    ['0:01:52:06', 'length-unread'],
    ['1:2:3:4:5', 'length-unread'],
    ['24:00:01', 'length-too-long'],
    ['99999', 'length-too-long'],
  ])('%s is refused: %s', (typed, code) => {
    expect(parseLength(typed, '25')).toMatchObject({ problem: { code, typed } });
  });
});

describe('a length as it is printed', () => {
  test.each([
    [0, '25', '0:00'],
    [7 * 25, '25', '0:07'],
    [112 * 25, '25', '1:52'],
    [112 * 25 + 12, '25', '1:52'],
    [112 * 25 + 13, '25', '1:53'],
    [12, '24', '0:01'],
    [723 * 24, '24', '12:03'],
    [3730 * 50, '50', '1:02:10'],
    [59 * 60 * 25 + 59 * 25 + 24, '25', '1:00:00'],
    // An hour of labels lasts 3603.6 s at 23.976, and 3599.9964 s at 29.97 drop-frame.
    [86_400, '23.976', '1:00:04'],
    [107_892, '29.97DF', '1:00:00'],
    [2880, '23.976', '2:00'],
    [2_589_408, '29.97DF', '24:00:00'],
  ] as const)('%i frames at %s are a length of %s', (frames, rate, length) => {
    expect(formatLength(frames, rate)).toBe(length);
  });

  test('a length below zero is a bug and throws', () => {
    expect(() => formatLength(-1, '25')).toThrow(RangeError);
  });
});
