import { describe, expect, test } from 'vitest';
import { type BoxHeard, driftBetween, offsetBetween } from '../../src/ltc/measure/compare.ts';
import { listening } from '../../src/ltc/measure/listening.ts';
import { tieTo } from '../../src/ltc/measure/tie.ts';
import { framesPerDay } from '../../src/time/rate.ts';
import { decoded } from './decoded.ts';
import { sound } from './encode.ts';

const box = (frames: number, atMs: number, doubtMs = 0.1): BoxHeard => ({
  frames,
  rate: '25',
  atMs,
  doubtMs,
});

const offset = (one: BoxHeard, other: BoxHeard) => {
  const found = offsetBetween(one, other);
  if (!found.ok) throw new Error(found.problem.code);
  return found.value;
};

describe('two boxes', () => {
  test('heard a minute apart: the offset, and a doubt that grows with the time between', () => {
    const found = offset(box(1000, 5000), box(1000 + 1500 + 3, 65_000));
    expect(found.frames).toBeCloseTo(3, 9);
    expect(found.ms).toBeCloseTo(120, 6);
    // 50 ppm of 60 s are 3 ms, and the doubts of both.
    expect(found.doubtMs).toBeCloseTo(3 + Math.hypot(0.1, 0.1), 9);
    expect(found.doubtFrames).toBeCloseTo(found.doubtMs / 40, 9);
  });

  test('across midnight, and whichever is ahead', () => {
    const last = framesPerDay('25') - 2;
    expect(offset(box(last, 0), box(3, 0)).frames).toBeCloseTo(5, 9);
    expect(offset(box(3, 0), box(last, 0)).frames).toBeCloseTo(-5, 9);
  });

  test('at two rates are not compared', () => {
    expect(offsetBetween(box(0, 0), { ...box(0, 0), rate: '24' })).toMatchObject({
      ok: false,
      problem: { code: 'heard-rates-differ', rates: ['25', '24'] },
    });
  });

  test('7.25 frames apart in sound are found to a hundredth of a frame', () => {
    const heard = (samples: Float32Array, fromMs: number): BoxHeard => {
      const listens = listening(48_000);
      for (const frame of decoded({ sampleRate: 48_000, samples })) listens.add(frame);
      const tie = tieTo(listens.heard()!);
      if (!tie.ok) throw new Error(tie.problem.code);
      const { frames, rate, start, spread } = tie.value;
      return { frames, rate, atMs: fromMs + start / 48, doubtMs: spread / 48 };
    };
    const recorder = heard(sound(90_000, 75, '25', { tail: 900 }), 0);
    // Ten seconds on it shows 250 more; the slate is 7.25 ahead, so a frame of it begins a quarter of a frame early.
    const slate = heard(sound(90_000 + 250 + 8, 75, '25', { start: 0.75 * 1920, tail: 900 }), 10_000);
    const found = offset(recorder, slate);
    expect(Math.abs(found.frames - 7.25)).toBeLessThan(0.01);
    expect(found.doubtFrames).toBeLessThan(0.1);
  });
});

describe('the drift of two boxes', () => {
  const at = (hours: number, ms: number, doubtMs = 0.2) => ({
    atMs: hours * 3_600_000,
    ms,
    doubtMs,
    frames: ms / 40,
    doubtFrames: doubtMs / 40,
  });
  const drift = (first: ReturnType<typeof at>, later: ReturnType<typeof at>) => {
    const found = driftBetween(first, later, '25');
    if (!found.ok) throw new Error(found.problem.code);
    return found.value;
  };

  test('of 3.6 ms an hour is 1 ppm, and a frame is reached when it says', () => {
    const found = drift(at(0, 0), at(1, 3.6));
    expect(found.ppm).toBeCloseTo(1, 9);
    expect(found.doubtPpm).toBeCloseTo((Math.hypot(0.2, 0.2) / 3_600_000) * 1e6, 9);
    // 40 ms at 3.6 ms an hour.
    expect(found.dueAtMs).toBeCloseTo((40 / 3.6) * 3_600_000, -2);
  });

  test('the other way, and past a frame already', () => {
    expect(drift(at(0, 10), at(1, -26)).dueAtMs).toBeCloseTo(3_600_000 + (14 / 36) * 3_600_000, -2);
    expect(drift(at(0, 0), at(1, 60)).dueAtMs).toBe(3_600_000);
  });

  test('within the doubt no date is promised', () => {
    expect(drift(at(0, 0, 4), at(1, 3.6, 4)).dueAtMs).toBeUndefined();
  });

  test('needs time between', () => {
    expect(driftBetween(at(1, 0), at(1, 1), '25')).toMatchObject({
      ok: false,
      problem: { code: 'heard-too-soon' },
    });
  });
});
