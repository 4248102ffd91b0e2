import { describe, expect, test } from 'vitest';
import { type Heard, listening } from '../../src/ltc/measure/listening.ts';
import { secondsToTell } from '../../src/ltc/measure/rate-heard.ts';
import { tieTo } from '../../src/ltc/measure/tie.ts';
import { frameOfLabel } from '../../src/time/label.ts';
import { type RateId, rateOf } from '../../src/time/rate.ts';
import { decoded } from './decoded.ts';
import { sound } from './encode.ts';
import { readRecording, type Sound } from './read-wave.ts';

function heardIn(recording: Sound): Heard {
  const listens = listening(recording.sampleRate);
  for (const frame of decoded(recording)) listens.add(frame);
  const heard = listens.heard();
  if (!heard) throw new Error('Nothing was heard');
  return heard;
}

/** Sound of the day's own making, in Hz that the phone's clock takes for 48,000. */
const made = (from: number, count: number, rate: RateId, sampleRate = 48_000): Sound => ({
  sampleRate: 48_000,
  samples: sound(from, count, rate, { sampleRate, start: 777.7, tail: 900 }),
});

describe('the rate', () => {
  test.each([
    ['clean-25', '25'],
    ['clean-24-over-midnight', '24'],
    ['clean-23976-16k', '23.976'],
    ['clean-30-44k1', '30'],
    ['clean-2997-nondrop', '29.97'],
    ['clean-2997-drop-skips', '29.97DF'],
    ['clean-2997-drop-tenth-minute', '29.97DF'],
    ['spoilt-25-hum', '25'],
    ['spoilt-25-telephone-band', '25'],
  ])('of %s is measured: %s', (name, rate) => {
    const { rate: found } = heardIn(readRecording(name));
    expect(found).toMatchObject({ rate, trouble: undefined });
    expect(found!.ppm).toBeLessThan(100);
  });

  test.each(['23.976', '24', '25', '29.97', '29.97DF', '30'] as const)(
    'of %s is told within two seconds by a phone whose clock is 50 ppm fast or slow',
    (rate) => {
      for (const sampleRate of [48_000 * (1 - 49e-6), 48_000 * (1 + 49e-6)]) {
        expect(heardIn(made(90_010, 2 * rateOf(rate).base, rate, sampleRate)).rate).toMatchObject({
          rate,
          trouble: undefined,
        });
      }
    },
  );

  test('is not said while 24 and 23.976 both fit', () => {
    const listens = listening(48_000);
    const line = { slope: 2000.9, slopeError: 0.7 };
    // Edges so uneven that three standard errors are as wide as what lies between the two rates.
    for (let i = 0; i < 12; i += 1) {
      const start = line.slope * i + (i % 2 ? 9 : -9);
      listens.add({
        label: { hours: 1, minutes: 0, seconds: 0, frames: i },
        dropFlag: false,
        colourFlag: false,
        userBits: null,
        polarityHolds: true,
        reversed: false,
        step: 1,
        start,
        end: start + line.slope,
        levelDb: -20,
        jitter: 0.1,
        sure: 0.5,
      });
    }
    expect(listens.heard()!.rate).toMatchObject({ rate: undefined, trouble: undefined });
  });

  test('needs the longer the more the edges stray', () => {
    expect(secondsToTell(0.05, 48_000)).toBeLessThan(0.5);
    expect(secondsToTell(1, 48_000)).toBeLessThan(1);
    // 20 samples of 48,000 in 24 frames a second: 37.7 frames, worked out by hand.
    expect(secondsToTell(20, 48_000)).toBe(38 / 24);
  });

  test('that is none is said: half speed is no rate', () => {
    expect(heardIn(readRecording('spoilt-25-half-speed')).rate).toMatchObject({
      rate: undefined,
      trouble: 'no-such-speed',
    });
  });

  test('counted as 25 and run at 24 is said', () => {
    const samples = sound(90_010, 60, '25', { fps: 24, tail: 900 });
    expect(heardIn({ sampleRate: 48_000, samples }).rate).toMatchObject({
      rate: '24',
      trouble: 'counts-another',
    });
  });

  test('a flag for drop-frame that the count does not follow is said, and the other way round', () => {
    const around = frameOfLabel({ hours: 10, minutes: 0, seconds: 59, frames: 0 }, '30');
    const samples = sound(around, 60, '30DF', { fps: 30_000 / 1001, tail: 900 });
    expect(heardIn({ sampleRate: 48_000, samples }).rate).toMatchObject({
      rate: '29.97DF',
      trouble: undefined,
    });
    const counted = heardIn(made(around, 60, '29.97'));
    expect(counted.rate).toMatchObject({ rate: '29.97', trouble: undefined });
    const listens = listening(48_000);
    for (const frame of decoded(made(around, 60, '29.97'))) listens.add({ ...frame, dropFlag: true });
    expect(listens.heard()!.rate).toMatchObject({ rate: '29.97DF', trouble: 'flag-and-count-differ' });
  });
});

describe('a jump', () => {
  test('is told with its size, and what follows is measured anew', () => {
    const heard = heardIn(readRecording('spoilt-25-gap-then-jump'));
    // 14:15:18:16 is the last before it; 18:00:00:00 begins 2.513 s after 14:15:16:17 did, which is 62.8 frames.
    const passed = 2.513 * 25;
    const labels =
      frameOfLabel({ hours: 18, minutes: 0, seconds: 0, frames: 0 }, '25') -
      frameOfLabel({ hours: 14, minutes: 15, seconds: 16, frames: 17 }, '25');
    expect(heard.jump!.byFrames).toBeGreaterThan(labels - passed - 1.5);
    expect(heard.jump!.byFrames).toBeLessThan(labels - passed + 1.5);
    expect(heard.jump!.from).toEqual({ hours: 14, minutes: 15, seconds: 18, frames: 16 });
    expect(heard.frames).toBeLessThan(51);
  });

  test('is none where frames were only missed', () => {
    const { samples, sampleRate } = made(90_010, 100, '25');
    samples.fill(0, 60_000, 80_000);
    const heard = heardIn({ samples, sampleRate });
    expect(heard.jump).toBeUndefined();
    expect(heard.frames).toBeGreaterThan(80);
    expect(heard.frames).toBeLessThan(92);
    expect(heard.rate).toMatchObject({ rate: '25' });
  });

  test('of one frame is told', () => {
    const one = sound(90_010, 50, '25', { tail: 0 });
    const other = sound(90_061, 50, '25', { tail: 900 });
    const samples = new Float32Array(one.length + other.length);
    samples.set(one);
    samples.set(other, one.length);
    const { jump } = heardIn({ samples, sampleRate: 48_000 });
    expect(jump).toMatchObject({ byFrames: 1 });
  });

  test('is none at midnight, nor where drop-frame skips', () => {
    expect(heardIn(readRecording('clean-24-over-midnight')).jump).toBeUndefined();
    expect(heardIn(readRecording('clean-2997-drop-skips')).jump).toBeUndefined();
  });
});

describe('a tie', () => {
  test('names the last frame and the sample at which it began', () => {
    const tie = tieTo(heardIn(readRecording('spoilt-25-noise')));
    if (!tie.ok) throw new Error(tie.problem.code);
    const first = frameOfLabel({ hours: 14, minutes: 15, seconds: 16, frames: 17 }, '25');
    expect(tie.value).toMatchObject({ rate: '25', heard: 124 });
    expect(Math.abs(tie.value.start + 0.5 - (tie.value.frames - first) * 1920)).toBeLessThan(0.2);
    expect(tie.value.spread).toBeLessThan(1);
  });

  test('needs two seconds, a rate, and a time that runs forwards', () => {
    const code = (heard: Heard): string => {
      const tie = tieTo(heard);
      return tie.ok ? 'tied' : tie.problem.code;
    };
    expect(code(heardIn(made(90_010, 48, '25')))).toBe('heard-too-short');
    expect(code(heardIn(made(90_010, 53, '25')))).toBe('tied');
    expect(code(heardIn(readRecording('spoilt-25-half-speed')))).toBe('heard-rate-unclear');
    expect(code(heardIn(readRecording('spoilt-25-reversed')))).toBe('heard-backwards');
    const one = sound(90_000, 1, '25');
    const samples = Float32Array.from({ length: 80 * one.length }, (_, i) => one[i % one.length]!);
    expect(code(heardIn({ sampleRate: 48_000, samples }))).toBe('heard-standing');
  });
});
