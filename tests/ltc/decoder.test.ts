import { describe, expect, test } from 'vitest';
import { labelOfFrame } from '../../src/time/label.ts';
import { type RateId, rateOf } from '../../src/time/rate.ts';
import { formatTimecode, parseTimecode } from '../../src/time/timecode.ts';
import { decoded, digitsOf } from './decoded.ts';
import { sound } from './encode.ts';
import { readRecording } from './read-wave.ts';

const frameOf = (text: string, rate: RateId): number => {
  const read = parseTimecode(text, rate);
  if (!read.ok) throw new Error(text);
  return read.value;
};

/** Recordings that count on from their first sample: name, rate, first frame, most that may be missing at the start. */
const ON_AND_ON: readonly (readonly [string, RateId, string])[] = [
  ['clean-25', '25', '10:11:12:13'],
  ['clean-24-over-midnight', '24', '23:59:58:00'],
  ['clean-23976-16k', '23.976', '01:00:00:00'],
  ['clean-30-44k1', '30', '05:06:07:08'],
  ['clean-2997-nondrop', '29.97', '12:00:58:20'],
  ['clean-2997-drop-skips', '29.97DF', '10:00:58;20'],
  ['clean-2997-drop-tenth-minute', '29.97DF', '10:09:58;20'],
  ['spoilt-25-inverted', '25', '14:15:16:17'],
  ['spoilt-25-clipped', '25', '14:15:16:17'],
  ['spoilt-25-noise', '25', '14:15:16:17'],
  ['spoilt-25-telephone-band', '25', '14:15:16:17'],
  ['spoilt-25-40dB-down-16bit', '25', '14:15:16:17'],
  ['spoilt-25-hum', '25', '14:15:16:17'],
];

describe('recordings made by another library', () => {
  test.each(ON_AND_ON)('%s is read whole, each frame where it is', (name, rate, first) => {
    const recording = readRecording(name);
    const { num, den } = rateOf(rate);
    const length = (recording.sampleRate * den) / num;
    const from = frameOf(first, rate);
    const frames = decoded(recording);
    // The last one is cut off before the edge that ends it.
    const count = Math.floor(recording.samples.length / length) - 1;
    const expected = Array.from({ length: count }, (_, i) =>
      formatTimecode(from + i, rate).replace(';', ':'),
    );
    expect(frames.map(digitsOf)).toEqual(expected);
    // The edge before sample 0 is half a sample earlier.
    const off = frames.map(({ start }, i) => Math.abs(start + 0.5 - i * length));
    expect(Math.max(...off)).toBeLessThan(0.25);
    expect(frames.every(({ dropFlag }) => dropFlag === (rate === '29.97DF'))).toBe(true);
    expect(
      frames.every(({ step, reversed, polarityHolds }) => step === 1 && !reversed && polarityHolds),
    ).toBe(true);
  });

  test('user bits, level and certainty are told', () => {
    const clean = decoded(readRecording('clean-25'));
    expect(new Set(clean.map(({ userBits }) => userBits))).toEqual(new Set(['20261128']));
    expect(clean.at(-1)!.levelDb).toBeCloseTo(-9, 0);
    expect(clean.at(-1)!.sure).toBeGreaterThan(0.9);
    const faint = decoded(readRecording('spoilt-25-40dB-down-16bit'));
    expect(faint.at(-1)!.levelDb).toBeCloseTo(-49, 0);
  });

  test.each([
    ['half', 'spoilt-25-half-speed', 3840],
    ['double', 'spoilt-25-double-speed', 960],
  ] as const)('at %s speed from the second frame on', (_, name, length) => {
    const recording = readRecording(name);
    const frames = decoded(recording);
    const from = frameOf('14:15:16:17', '25');
    const first = frames[0]!;
    const skipped = Math.round(first.start / length);
    expect(skipped).toBeLessThanOrEqual(1);
    expect(frames.map(digitsOf)).toEqual(frames.map((_frame, i) => formatTimecode(from + skipped + i, '25')));
    expect(frames.length).toBeGreaterThanOrEqual(Math.floor(recording.samples.length / length) - 2);
    expect(frames.every(({ start }, i) => Math.abs(start + 0.5 - (skipped + i) * length) < 0.6)).toBe(true);
  });

  test('backwards is read, and said to be', () => {
    const frames = decoded(readRecording('spoilt-25-reversed'));
    const last = frameOf('14:15:16:17', '25') + 124;
    expect(frames.map(digitsOf)).toEqual(frames.map((_frame, i) => formatTimecode(last - i, '25')));
    expect(frames.length).toBeGreaterThanOrEqual(123);
    expect(
      frames.every(({ reversed, step, userBits }) => reversed && step === -1 && userBits === '20261128'),
    ).toBe(true);
  });

  test('half a second of noise gives nothing, and the time after it is read at once', () => {
    const { samples, sampleRate } = readRecording('spoilt-25-gap-then-jump');
    const frames = decoded({ samples, sampleRate });
    const after = frames.filter(({ label }) => label.hours === 18);
    const before = frames.filter(({ label }) => label.hours !== 18);
    expect(before.map(digitsOf)).toEqual(
      before.map((_frame, i) => formatTimecode(frameOf('14:15:16:17', '25') + i, '25')),
    );
    expect(before).toHaveLength(50);
    expect(after.map(digitsOf)).toEqual(
      after.map((_frame, i) => formatTimecode(frameOf('18:00:00:00', '25') + i, '25')),
    );
    // 1.99 s of it: all but the first, in which the noise is still in the filter, and the last, which is cut off.
    expect(after.length).toBeGreaterThanOrEqual(48);
  });

  test('is the same in blocks of any size', () => {
    const recording = readRecording('spoilt-25-noise');
    const whole = decoded(recording, recording.samples.length);
    for (const block of [1, 100, 128, 1000, 4096, 48_000]) {
      const frames = decoded(recording, block);
      expect(frames.map(digitsOf)).toEqual(whole.map(digitsOf));
      expect(frames.every(({ start }, i) => start === whole[i]!.start)).toBe(true);
    }
  });
});

describe('sound made here', () => {
  test.each([
    ['16 kHz', 16_000],
    ['22.05 kHz', 22_050],
    ['32 kHz', 32_000],
    ['44.1 kHz', 44_100],
    ['48 kHz', 48_000],
    ['88.2 kHz', 88_200],
    ['96 kHz', 96_000],
    ['192 kHz', 192_000],
  ])('is read at every rate at %s', (_, sampleRate) => {
    for (const rate of ['23.976', '24', '25', '29.97', '29.97DF', '30'] as const) {
      const { num, den } = rateOf(rate);
      const frames = decoded({
        sampleRate,
        samples: sound(1790, 30, rate, { sampleRate, start: 1234.56, tail: 900 }),
      });
      const skipped = 30 - frames.length;
      expect(skipped).toBeLessThanOrEqual(1);
      frames.forEach((frame, i) => {
        expect(frame.label).toEqual(labelOfFrame(1790 + skipped + i, rate));
        expect(Math.abs(frame.start + 0.5 - 1234.56 - ((skipped + i) * sampleRate * den) / num)).toBeLessThan(
          0.5,
        );
      });
    }
  });

  test.each([1 / 3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.1, 1.25, 1.4, 1.6, 1.8, 2, 2.3, 2.6, 3])(
    'is read at %f of the speed',
    (speed) => {
      for (const [rate, fps] of [
        ['24', 24],
        ['25', 25],
        ['30', 30],
      ] as const) {
        const samples = sound(90_000, 40, rate, { fps: fps * speed, start: 3000, tail: 5000 });
        const frames = decoded({ sampleRate: 48_000, samples });
        expect(frames.map(({ label }) => label)).toEqual(
          frames.map((_frame, i) => labelOfFrame(90_040 - frames.length + i, rate)),
        );
        // All but one, in which the sound began.
        expect(frames.length, `${rate}`).toBeGreaterThanOrEqual(38);
      }
    },
  );

  test('the first two whole frames are given when the second has ended', () => {
    const samples = sound(90_000, 3, '25', { start: 960, tail: 900 });
    const first = decoded({ sampleRate: 48_000, samples: samples.subarray(0, 960 + 2 * 1920 + 200) });
    expect(first.map(digitsOf)).toEqual(['01:00:00:00', '01:00:00:01']);
  });

  test('a constant level, a loud hum and a phone that clips do not matter', () => {
    const clean = sound(90_000, 60, '25', { level: 0.1, tail: 900 });
    const spoilt = clean.map((value, i) =>
      Math.max(-0.9, Math.min(0.9, value + 0.3 + 0.4 * Math.sin((2 * Math.PI * 50 * i) / 48_000))),
    );
    expect(decoded({ sampleRate: 48_000, samples: spoilt }).length).toBeGreaterThanOrEqual(58);
  });

  test('50 dB down with hardly any steps left', () => {
    const samples = sound(90_000, 60, '25', { level: 10 ** (-50 / 20), tail: 900 }).map(
      (value) => Math.round(value * 32_768) / 32_768,
    );
    expect(decoded({ sampleRate: 48_000, samples }).length).toBeGreaterThanOrEqual(59);
  });

  test('a polarity bit that is never set is told, and the frames are still read', () => {
    const samples = sound(90_000, 60, '25', { polarity: false, tail: 900 });
    const frames = decoded({ sampleRate: 48_000, samples });
    expect(frames.length).toBeGreaterThanOrEqual(59);
    expect(new Set(frames.map(({ polarityHolds }) => polarityHolds))).toEqual(new Set([true, false]));
  });

  test('a time that stands is given as standing', () => {
    const one = sound(90_000, 1, '25');
    const samples = Float32Array.from({ length: 20 * one.length }, (_, i) => one[i % one.length]!);
    // An even number of edges, so that one follows the other without a break.
    const frames = decoded({ sampleRate: 48_000, samples });
    expect(frames.length).toBeGreaterThan(15);
    expect(new Set(frames.map(({ step }) => step))).toEqual(new Set([0]));
  });

  test('numbers that are none, and silence, give nothing and do no harm', () => {
    const samples = sound(90_000, 60, '25', { start: 2000, tail: 900 });
    samples.set([Number.NaN, Number.POSITIVE_INFINITY, 1e30], 500);
    expect(decoded({ sampleRate: 48_000, samples }).length).toBeGreaterThanOrEqual(59);
    expect(decoded({ sampleRate: 48_000, samples: new Float32Array(48_000) })).toEqual([]);
  });
});
