import { describe, expect, test } from 'vitest';
import { type Heard, listening } from '../../../src/ltc/measure/listening.ts';
import {
  framesRead,
  type HeardBeside,
  heardRateWords,
  heardTroubles,
  labelWords,
  levelWords,
} from '../../../src/ui/words/hearing.ts';
import { decoded } from '../../ltc/decoded.ts';
import { sound } from '../../ltc/encode.ts';
import { readRecording, type Sound } from '../../ltc/read-wave.ts';

const DAY: HeardBeside = { rate: '25', date: '2026-11-28', today: '2026-11-28' };

function heardIn(recording: Sound): Heard {
  const listens = listening(recording.sampleRate);
  for (const frame of decoded(recording)) listens.add(frame);
  return listens.heard()!;
}
const troubles = (name: string, beside: Partial<HeardBeside> = {}): string[] =>
  heardTroubles(heardIn(readRecording(name)), { ...DAY, ...beside });

describe('what is wrong with the timecode heard', () => {
  test('is nothing where it is the day’s', () => {
    expect(troubles('clean-25')).toEqual([]);
  });

  test('another rate than the day’s is named', () => {
    expect(troubles('clean-2997-drop-skips')).toEqual([
      'Runs at 29.97 fps drop-frame. The day is at 25 fps.',
    ]);
    expect(troubles('clean-23976-16k', { rate: '24' })).toEqual([
      'Runs at 23.976 fps. The day is at 24 fps.',
    ]);
    expect(troubles('clean-23976-16k', { rate: null })).toEqual([]);
  });

  test('another date in the user bits is named, but not the night after the day', () => {
    expect(troubles('clean-25', { date: '2026-11-20', today: '2026-11-20' })).toEqual([
      'User bits say 2026-11-28. The day is 2026-11-20.',
    ]);
    expect(troubles('clean-25', { date: '2026-11-27', today: '2026-11-27' })).toEqual([]);
    expect(troubles('clean-25', { date: '2026-11-01', today: '2026-11-28' })).toEqual([]);
    expect(troubles('clean-25', { date: '' })).toEqual([]);
  });

  test('user bits that are no date say nothing', () => {
    const samples = sound(90_000, 60, '25', { userBits: 'DEADBEEF', tail: 900 });
    expect(heardTroubles(heardIn({ samples, sampleRate: 48_000 }), DAY)).toEqual([]);
  });

  test('a jump is named with its size', () => {
    // 18:00:00:00 is 337,083 frames after 14:15:16:17, and began 62.8 frames after it: 3 h 44 min 41 s too many.
    expect(troubles('spoilt-25-gap-then-jump')).toEqual(['The timecode jumped ahead by 3:44:41.']);
    const [one, other] = [sound(90_010, 50, '25'), sound(90_053, 60, '25', { tail: 900 })];
    const samples = new Float32Array(one.length + other.length);
    samples.set(one);
    samples.set(other, one.length);
    expect(heardTroubles(heardIn({ samples, sampleRate: 48_000 }), DAY)).toEqual([
      'The timecode jumped back by 7 frames.',
    ]);
  });

  test('backwards and standing are named', () => {
    expect(troubles('spoilt-25-reversed')).toEqual([
      'The timecode runs backwards. Play it forwards at its own speed.',
    ]);
    const one = sound(90_000, 1, '25');
    const samples = Float32Array.from({ length: 80 * one.length }, (_, i) => one[i % one.length]!);
    expect(heardTroubles(heardIn({ sampleRate: 48_000, samples }), DAY)).toEqual([
      'The timecode stands still. Start it running.',
    ]);
  });

  test('a speed that is no rate, and a count that is another’s', () => {
    expect(troubles('spoilt-25-half-speed')).toEqual([
      'Runs at 12.50 frames a second, which is no rate in use.',
    ]);
    const samples = sound(90_010, 60, '25', { fps: 24, tail: 900 });
    expect(heardTroubles(heardIn({ sampleRate: 48_000, samples }), DAY)).toEqual([
      'Runs at 24 and counts frames of another rate.',
      'Runs at 24 fps. The day is at 25 fps.',
    ]);
  });
});

test('the rate with what it was measured at, or as much as is known', () => {
  expect(heardRateWords(undefined)).toBe('measuring');
  expect(heardRateWords({ fps: 24.9999, ppm: 50.2, rate: '25', trouble: undefined })).toBe(
    '25 fps (measured 25.000 fps ± 51 ppm)',
  );
  expect(heardRateWords({ fps: 23.99, ppm: 900, rate: undefined, trouble: undefined })).toBe(
    '23.990 fps ± 900 ppm; not told apart yet',
  );
  expect(heardRateWords({ fps: 12.5, ppm: 51, rate: undefined, trouble: 'no-such-speed' })).toBe(
    '12.500 fps ± 51 ppm',
  );
});

test('level and frames in words', () => {
  expect(levelWords(Number.NEGATIVE_INFINITY)).toBe('silent');
  expect(levelWords(-50)).toBe('−50 dB, faint');
  expect(levelWords(-12.2)).toBe('−12 dB');
  expect(levelWords(0)).toBe('0 dB, clipping: turn it down or add a pad');
  expect(framesRead({ good: 1, bad: 0 })).toBe('1 frame read, 0 lost');
});

test('drop-frame digits have their mark', () => {
  const label = { hours: 1, minutes: 2, seconds: 3, frames: 4 };
  expect(labelWords(label, false)).toBe('01:02:03:04');
  expect(labelWords(label, true)).toBe('01:02:03;04');
});
