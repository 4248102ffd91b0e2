import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { framesPerDay, type RateId } from '../../src/time/rate.ts';
import {
  addFrames,
  formatTimecode,
  framesBetween,
  framesToMs,
  msToFrames,
  parseTimecode,
} from '../../src/time/timecode.ts';
import { RATE_IDS } from './every-rate.ts';

const SEED = 20261007;
const frameOf = (text: string, rate: RateId): number => {
  const read = parseTimecode(text, rate);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return read.value;
};

// Drop-frame rule as in public descriptions of SMPTE ST 12-1; frames 10,789 to 17,982 and 1,084,319 equal the test table of a
// public library (OpenTimelineIO, opentime); the other frames are that rule worked out. Columns: drop-frame label, frame,
// label of the same frame without drop-frame.
const DROP_FRAME_2997: readonly (readonly [string, number, string])[] = [
  ['00:00:59;29', 1_799, '00:00:59:29'],
  ['00:01:00;02', 1_800, '00:01:00:00'],
  ['00:01:59;29', 3_597, '00:01:59:27'],
  ['00:02:00;02', 3_598, '00:01:59:28'],
  ['00:05:59;29', 10_789, '00:05:59:19'],
  ['00:06:00;02', 10_790, '00:05:59:20'],
  ['00:09:59;29', 17_981, '00:09:59:11'],
  ['00:10:00;00', 17_982, '00:09:59:12'],
  ['00:11:00;02', 19_782, '00:10:59:12'],
  ['01:00:00;00', 107_892, '00:59:56:12'],
  ['01:01:00;02', 109_692, '01:00:56:12'],
  ['10:00:00;00', 1_078_920, '09:59:24:00'],
  ['10:03:00;05', 1_084_319, '10:02:23:29'],
  ['12:00:00;00', 1_294_704, '11:59:16:24'],
  ['23:59:59;29', 2_589_407, '23:58:33:17'],
];

// The same rule; 03:36:09 is also in the tests of a public library (Python timecode), which counts from 1 and so reads one higher.
const OTHER_LABELS: readonly (readonly [string, RateId, number])[] = [
  ['00:01:00;04', '59.94DF', 3_600],
  ['00:09:59;59', '59.94DF', 35_963],
  ['00:10:00;00', '59.94DF', 35_964],
  ['01:00:00;00', '59.94DF', 215_784],
  ['23:59:59;59', '59.94DF', 5_178_815],
  ['01:00:00:00', '23.976', 86_400],
  ['01:00:00:00', '24', 86_400],
  ['01:00:00:00', '25', 90_000],
  ['01:00:00:00', '29.97', 108_000],
  ['01:00:00:00', '30', 108_000],
  ['23:59:59:23', '23.976', 2_073_599],
  ['23:59:59:23', '24', 2_073_599],
  ['23:59:59:24', '25', 2_159_999],
  ['23:59:59:29', '29.97', 2_591_999],
  ['23:59:59:29', '30', 2_591_999],
  ['23:59:59:47', '47.952', 4_147_199],
  ['23:59:59:47', '48', 4_147_199],
  ['23:59:59:49', '50', 4_319_999],
  ['23:59:59:59', '59.94', 5_183_999],
  ['23:59:59:59', '60', 5_183_999],
  ['03:36:09;23', '29.97DF', 388_703],
  ['03:36:09:23', '29.97', 389_093],
  ['03:36:09:23', '30', 389_093],
];

describe('labels and frames', () => {
  test.each(DROP_FRAME_2997)(
    '%s at 29.97 DF is frame %i, labelled %s without drop-frame',
    (label, frame, plain) => {
      expect(frameOf(label, '29.97DF')).toBe(frame);
      expect(formatTimecode(frame, '29.97DF')).toBe(label);
      expect(formatTimecode(frame, '29.97')).toBe(plain);
      expect(frameOf(plain, '29.97')).toBe(frame);
      expect(frameOf(label, '30DF')).toBe(frame);
    },
  );

  test.each(OTHER_LABELS)('%s at %s is frame %i', (label, rate, frame) => {
    expect(frameOf(label, rate)).toBe(frame);
    expect(formatTimecode(frame, rate)).toBe(label);
  });

  // Tests of public libraries.
  test.each([
    ['13:36:59;29', '13:37:00;02'],
    ['13:39:59;29', '13:40:00;00'],
  ])('after %s comes %s at 29.97 DF', (label, next) => {
    expect(formatTimecode(addFrames(frameOf(label, '29.97DF'), 1, '29.97DF'), '29.97DF')).toBe(next);
  });

  test(`what is written reads back at every rate (seed ${SEED})`, () => {
    for (const rate of RATE_IDS) {
      const frame = fc.integer({ min: 0, max: framesPerDay(rate) - 1 });
      const readsBack = fc.property(frame, (n) => frameOf(formatTimecode(n, rate), rate) === n);
      fc.assert(readsBack, { seed: SEED, numRuns: 300 });
    }
    expect(RATE_IDS.length).toBe(13);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, 0.5, 2 ** 53])(
    'a count of %d frames is a bug and throws',
    (n) => {
      expect(() => formatTimecode(n, '25')).toThrow(RangeError);
      expect(() => addFrames(0, n, '25')).toThrow(RangeError);
      expect(() => framesToMs(n, '25')).toThrow(RangeError);
    },
  );
});

// Consequences of one day of labels, SMPTE ST 12-1.
describe('midnight', () => {
  test('20 seconds after 23:59:50:00 at 25 is 00:00:10:00', () => {
    expect(formatTimecode(addFrames(frameOf('23:59:50:00', '25'), 500, '25'), '25')).toBe('00:00:10:00');
  });

  test('after 23:59:59;29 at 29.97 DF comes 00:00:00;00', () => {
    expect(addFrames(2_589_407, 1, '29.97DF')).toBe(0);
    expect(formatTimecode(2_589_408, '29.97DF')).toBe('00:00:00;00');
  });

  test('before 00:00:00:00 comes the last label, at every rate', () => {
    for (const rate of RATE_IDS) {
      expect(addFrames(0, -1, rate)).toBe(framesPerDay(rate) - 1);
      expect(formatTimecode(-1, rate)).toBe(formatTimecode(framesPerDay(rate) - 1, rate));
    }
  });

  test('an end label before the start lies past midnight', () => {
    expect(framesBetween(frameOf('23:59:50:00', '25'), frameOf('00:00:10:00', '25'), '25')).toBe(500);
    expect(framesBetween(frameOf('10:00:00:00', '25'), frameOf('10:00:10:12', '25'), '25')).toBe(262);
    expect(framesBetween(0, 0, '25')).toBe(0);
  });

  // 86,486.4 s, 86,399.9136 s and 86,313.6 s: a day of labels is no day of the clock.
  test.each([
    ['23.976', 86_486_400],
    ['29.97', 86_486_400],
    ['29.97DF', 86_399_913],
    ['30DF', 86_313_600],
    ['25', 86_400_000],
  ] as const)('24 hours of labels at %s last %i ms', (rate, ms) => {
    expect(framesToMs(framesPerDay(rate), rate)).toBe(ms);
  });
});

describe('a typed timecode', () => {
  test.each([
    ['213207', '21:32:07:00'],
    ['21:32:07', '21:32:07:00'],
    ['21:32:07:12', '21:32:07:12'],
    ['21.32.07.12', '21:32:07:12'],
    ['21 32 07 12', '21:32:07:12'],
    ['21:32:07;12', '21:32:07:12'],
    ['21:32:07.12', '21:32:07:12'],
    ['21-32-07', '21:32:07:00'],
    ['21320712', '21:32:07:12'],
    ['9320712', '09:32:07:12'],
    ['93207', '09:32:07:00'],
    ['2132', '21:32:00:00'],
    ['932', '09:32:00:00'],
    ['21:32', '21:32:00:00'],
    ['9:5:3:1', '09:05:03:01'],
    ['  213207\n', '21:32:07:00'],
    ['２１：３２：０７', '21:32:07:00'],
    ['000000', '00:00:00:00'],
  ])('%j is read as %s', (typed, label) => {
    expect(formatTimecode(frameOf(typed, '25'), '25')).toBe(label);
  });

  test('a second typed without frames is its first frame, also where drop-frame leaves out 00', () => {
    expect(formatTimecode(frameOf('10:01', '29.97DF'), '29.97DF')).toBe('10:01:00;02');
    expect(formatTimecode(frameOf('100100', '59.94DF'), '59.94DF')).toBe('10:01:00;04');
    expect(formatTimecode(frameOf('10:10:00', '29.97DF'), '29.97DF')).toBe('10:10:00;00');
  });

  test.each([
    ['', { code: 'timecode-empty' }],
    [' \t ', { code: 'timecode-empty' }],
    ['half nine', { code: 'timecode-not-read', text: 'half nine', at: 0, found: 'h' }],
    ['21:3x', { code: 'timecode-not-read', text: '21:3x', at: 4, found: 'x' }],
    ['21::32', { code: 'timecode-not-read', text: '21::32', at: 2, found: ':' }],
    ['21:32:', { code: 'timecode-not-read', text: '21:32:', at: 5, found: ':' }],
    ['-1:00:00:00', { code: 'timecode-not-read', text: '-1:00:00:00', at: 0, found: '-' }],
    ['10:00:😀', { code: 'timecode-not-read', text: '10:00:😀', at: 5, found: ':' }],
    ['😀', { code: 'timecode-not-read', text: '😀', at: 0, found: '😀' }],
    ['NaN', { code: 'timecode-not-read', text: 'NaN', at: 0, found: 'N' }],
    ['1e5', { code: 'timecode-not-read', text: '1e5', at: 1, found: 'e' }],
    ['21', { code: 'timecode-too-short', text: '21' }],
    ['7', { code: 'timecode-too-short', text: '7' }],
    ['10:00:00:00:00', { code: 'timecode-too-long', text: '10:00:00:00:00' }],
    ['10:00:00.500', { code: 'timecode-too-long', text: '10:00:00.500' }],
    ['123456789', { code: 'timecode-too-long', text: '123456789' }],
    [
      '24:00:00:00',
      { code: 'timecode-out-of-range', text: '24:00:00:00', part: 'hours', value: 24, max: 23 },
    ],
    [
      '10:60:00:00',
      { code: 'timecode-out-of-range', text: '10:60:00:00', part: 'minutes', value: 60, max: 59 },
    ],
    [
      '10:00:75:00',
      { code: 'timecode-out-of-range', text: '10:00:75:00', part: 'seconds', value: 75, max: 59 },
    ],
    [
      '10:00:00:25',
      { code: 'timecode-out-of-range', text: '10:00:00:25', part: 'frames', value: 25, max: 24 },
    ],
    ['9999', { code: 'timecode-out-of-range', text: '9999', part: 'hours', value: 99, max: 23 }],
  ])('%j is refused, saying what and where', (typed, problem) => {
    expect(parseTimecode(typed, '25')).toEqual({ ok: false, problem });
  });

  // Invalid labels: drop-frame rule as in public descriptions of SMPTE ST 12-1.
  test.each([
    ['00:01:00;00', '29.97DF', '00:01:00;02'],
    ['00:01:00;01', '29.97DF', '00:01:00;02'],
    ['00:01:00;03', '59.94DF', '00:01:00;04'],
  ] as const)('%s does not exist at %s; the next one is %s', (text, rate, next) => {
    expect(parseTimecode(text, rate)).toEqual({
      ok: false,
      problem: { code: 'timecode-dropped', text, rate, next },
    });
  });

  test('10:00:00:23 exists at 24 and 10:00:00:24 does not', () => {
    expect(parseTimecode('10:00:00:23', '24').ok).toBe(true);
    expect(parseTimecode('10:00:00:24', '24')).toMatchObject({ problem: { part: 'frames', max: 23 } });
  });

  test('a flood of digits is refused with a short quotation', () => {
    const refused = parseTimecode('1'.repeat(50_000_000), '25');
    expect(refused).toMatchObject({ problem: { code: 'timecode-too-long', text: `${'1'.repeat(24)}…` } });
  });

  test(`any text at all gives a frame of the day or a coded problem (seed ${SEED})`, () => {
    const marks = fc.string({ unit: fc.constantFrom(...'0123456789:;.,-_ x٣') });
    const property = fc.property(
      fc.oneof(marks, fc.string({ unit: 'binary' })),
      fc.constantFrom(...RATE_IDS),
      (text, rate) => {
        const read = parseTimecode(text, rate);
        if (!read.ok) return read.problem.code.startsWith('timecode-');
        return Number.isInteger(read.value) && read.value >= 0 && read.value < framesPerDay(rate);
      },
    );
    expect(fc.check(property, { seed: SEED, numRuns: 3000 }).counterexample).toBeNull();
  });
});

describe('frames and real time', () => {
  test.each([
    [24, '23.976', 1001],
    [86_400, '23.976', 3_603_600],
    [107_892, '29.97DF', 3_599_996],
    [107_892, '30DF', 3_596_400],
    [1, '29.97', 33],
    [1, '25', 40],
    [0, '25', 0],
    [-1, '25', -40],
    [-1, '29.97', -34],
  ] as const)('%i frames at %s last %i ms, rounded down', (frames, rate, ms) => {
    expect(framesToMs(frames, rate)).toBe(ms);
  });

  test.each([
    [1001, '23.976', 24],
    [1000, '23.976', 23],
    [39, '25', 0],
    [40, '25', 1],
    [40.9, '25', 1],
    [-1, '25', -1],
    [0, '25', 0],
    [3_600_000, '29.97DF', 107_892],
    [1_800_000_000_000, '59.94', 107_892_107_892],
  ] as const)('%d ms at %s hold %i whole frames', (ms, rate, frames) => {
    expect(msToFrames(ms, rate)).toBe(frames);
  });

  test(`both agree with unbounded whole numbers, however far the clock is off (seed ${SEED})`, () => {
    const floorDiv = (a: bigint, b: bigint): bigint => (a - (((a % b) + b) % b)) / b;
    const property = fc.property(fc.integer({ min: -4e12, max: 4e12 }), (n) => {
      const ms = floorDiv(BigInt(n) * 1001n * 1000n, 30_000n);
      const frames = floorDiv(BigInt(n) * 30_000n, 1001n * 1000n);
      return BigInt(framesToMs(n, '29.97')) === ms && BigInt(msToFrames(n, '29.97')) === frames;
    });
    expect(fc.check(property, { seed: SEED, numRuns: 2000 }).counterexample).toBeNull();
  });
});
