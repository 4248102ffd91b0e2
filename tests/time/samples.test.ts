import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { framesPerDay, type RateId } from '../../src/time/rate.ts';
import { framesToSamples, samplesToFrames } from '../../src/time/samples.ts';
import { formatTimecode, parseTimecode } from '../../src/time/timecode.ts';
import { RATE_IDS } from './every-rate.ts';

const SEED = 20261007;
const SAMPLE_RATES = [44_100, 47_952, 48_000, 48_048, 88_200, 96_000, 176_400, 192_000];
const frameOf = (text: string, rate: RateId): number => {
  const read = parseTimecode(text, rate);
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return read.value;
};

// EBU Tech 3285 v2, TimeReference: samples since midnight. Worked out exactly from the rates of SMPTE ST 12-1; `true` where the
// frame starts on a whole sample.
const STARTS: readonly (readonly [string, RateId, number, number, boolean])[] = [
  ['01:00:00:00', '24', 48_000, 172_800_000, true],
  ['01:00:00:00', '25', 48_000, 172_800_000, true],
  ['01:00:00:00', '30', 48_000, 172_800_000, true],
  ['01:00:00:00', '23.976', 48_000, 172_972_800, true],
  ['01:00:00:00', '29.97', 48_000, 172_972_800, true],
  ['01:00:00:00', '47.952', 48_000, 172_972_800, true],
  ['01:00:00;00', '29.97DF', 48_000, 172_799_828, false],
  ['01:00:00;00', '59.94DF', 48_000, 172_799_828, false],
  ['00:01:00;02', '29.97DF', 48_000, 2_882_880, true],
  ['00:10:00;00', '29.97DF', 48_000, 28_799_972, false],
  ['10:00:00;00', '29.97DF', 48_000, 1_727_998_272, true],
  ['10:00:00:00', '23.976', 48_000, 1_729_728_000, true],
  ['10:00:00:00', '29.97', 48_000, 1_729_728_000, true],
  ['10:00:00:00', '24', 48_000, 1_728_000_000, true],
  ['01:00:00;00', '30DF', 48_000, 172_627_200, true],
  ['23:59:59:23', '23.976', 48_000, 4_151_345_198, true],
  ['23:59:59;29', '29.97DF', 48_000, 4_147_194_252, false],
  ['01:00:00:00', '24', 48_048, 172_972_800, true],
  ['13:00:00:00', '25', 96_000, 4_492_800_000, true],
  ['12:25:40:00', '25', 96_000, 4_295_040_000, true],
  ['23:59:59:00', '25', 192_000, 16_588_608_000, true],
];

describe('a frame and its first sample', () => {
  test.each(STARTS)('%s at %s and %i Hz starts at sample %i', (label, rate, sampleRate, samples, exact) => {
    const frame = frameOf(label, rate);
    expect(framesToSamples(frame, sampleRate, rate)).toEqual({ samples, exact });
    expect(samplesToFrames(samples, sampleRate, rate)).toEqual({ frames: frame, remainder: 0 });
  });

  test('the first frames of 29.97 and 59.94 at 48000 start where rounding up puts them', () => {
    const starts = (rate: RateId) => [0, 1, 2, 3, 4, 5].map((n) => framesToSamples(n, 48_000, rate).samples);
    expect(starts('29.97')).toEqual([0, 1602, 3204, 4805, 6407, 8008]);
    expect(starts('59.94')).toEqual([0, 801, 1602, 2403, 3204, 4004]);
  });

  test('a day of labels is counted out in full, not cut at 86,400 seconds', () => {
    expect(framesToSamples(framesPerDay('29.97'), 48_000, '29.97')).toEqual({
      samples: 4_151_347_200,
      exact: true,
    });
    // 4,147,195,852.8
    expect(framesToSamples(framesPerDay('29.97DF'), 48_000, '29.97DF')).toEqual({
      samples: 4_147_195_853,
      exact: false,
    });
    expect(samplesToFrames(4_147_199_999, 48_000, '24').frames).toBe(framesPerDay('24'));
    expect(formatTimecode(samplesToFrames(4_151_347_200, 48_000, '29.97').frames, '29.97')).toBe(
      '00:00:00:00',
    );
  });
});

describe('a sample count read back', () => {
  test('172,799,827 is the floor of a start and snaps up; one sample earlier is still the frame before', () => {
    expect(samplesToFrames(172_799_827, 48_000, '29.97DF')).toEqual({ frames: 107_892, remainder: -1 });
    expect(samplesToFrames(172_799_828, 48_000, '29.97DF')).toEqual({ frames: 107_892, remainder: 0 });
    expect(samplesToFrames(172_799_826, 48_000, '29.97DF').frames).toBe(107_891);
  });

  // A published header: 23.976 at 48000, OriginationTime 12:40:00, TimeReference 2,190,940,753 (documentation of a public reader).
  test('a published count one sample late is the frame 12:39:59:00, and not 12:40:44', () => {
    expect(samplesToFrames(2_190_940_753, 48_000, '23.976')).toEqual({ frames: 1_094_376, remainder: 1 });
    expect(formatTimecode(1_094_376, '23.976')).toBe('12:39:59:00');
  });

  // iXML 3.01, sample document: TIMESTAMP 48,048,000 at 48000, TIMECODE_RATE 24000/1001, slate point at RELATIVE 6,544,645.
  test('the sample document of iXML starts at 00:16:40:00 with its slate at 00:18:56:05', () => {
    expect(samplesToFrames(48_048_000, 48_000, '23.976')).toEqual({ frames: 24_000, remainder: 0 });
    expect(formatTimecode(24_000, '23.976')).toBe('00:16:40:00');
    const slate = samplesToFrames(48_048_000 + 6_544_645, 48_000, '23.976');
    expect(slate).toEqual({ frames: 27_269, remainder: 107 });
    expect(formatTimecode(slate.frames, '23.976')).toBe('00:18:56:05');
  });

  // iXML 3.01, TIMESTAMP_SAMPLE_RATE.
  test('a count stamped at 48048 but decoded at 48000 comes out 3.6 s late', () => {
    expect(formatTimecode(samplesToFrames(172_972_800, 48_048, '24').frames, '24')).toBe('01:00:00:00');
    expect(formatTimecode(samplesToFrames(172_972_800, 48_000, '24').frames, '24')).toBe('01:00:03:14');
  });

  test('60 s after 01:00:00;00 at 29.97 DF the end label is 01:00:59;28', () => {
    const end = samplesToFrames(172_799_828 + 2_880_000, 48_000, '29.97DF');
    expect(end.frames).toBe(109_690);
    expect(formatTimecode(end.frames, '29.97DF')).toBe('01:00:59;28');
  });

  test(`every frame is found again, also from one sample early or late (seed ${SEED})`, () => {
    const property = fc.property(
      fc.constantFrom(...RATE_IDS),
      fc.constantFrom(...SAMPLE_RATES),
      fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
      (rate, sampleRate, part) => {
        const frames = Math.floor(part * framesPerDay(rate));
        const { samples } = framesToSamples(frames, sampleRate, rate);
        for (const off of [-1, 0, 1]) {
          const read = samplesToFrames(samples + off, sampleRate, rate);
          expect(read).toEqual({ frames, remainder: off });
        }
      },
    );
    fc.assert(property, { seed: SEED, numRuns: 3000 });
  });

  test(`frame start plus remainder is the count again (seed ${SEED})`, () => {
    const property = fc.property(
      fc.constantFrom(...RATE_IDS),
      fc.constantFrom(...SAMPLE_RATES),
      fc.integer({ min: 0, max: 2 ** 35 }),
      (rate, sampleRate, samples) => {
        const { frames, remainder } = samplesToFrames(samples, sampleRate, rate);
        return remainder >= -1 && framesToSamples(frames, sampleRate, rate).samples + remainder === samples;
      },
    );
    expect(fc.check(property, { seed: SEED, numRuns: 3000 }).counterexample).toBeNull();
  });

  test.each([0, -48_000, Number.NaN, 44_100.5])('a sample rate of %d is a bug and throws', (sampleRate) => {
    expect(() => samplesToFrames(0, sampleRate, '25')).toThrow(RangeError);
    expect(() => framesToSamples(0, sampleRate, '25')).toThrow(RangeError);
  });
});
