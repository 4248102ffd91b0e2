import { expect, test } from 'vitest';
import { audioClock } from '../../../src/app/ear/audio-clock.ts';

test('the earliest news say when a sample was heard, however late the others were', () => {
  const clock = audioClock(48_000);
  expect(clock.msAt(0)).toBeUndefined();
  // Every tenth of a second, late by 3 to 40 ms.
  const late = [40, 9, 3, 12, 5, 30, 3.5, 4, 11, 3.2];
  for (const [i, ms] of late.entries()) clock.told(4800 * (i + 1), 1000 + 100 * (i + 1) + ms);
  expect(clock.msAt(0)).toBeCloseTo(1003, 9);
  expect(clock.msAt(24_000)).toBeCloseTo(1503, 9);
  // The fifth earliest is 5 ms late.
  expect(clock.doubtMs()).toBeCloseTo(2, 9);
});

test('a sound card that runs slow is followed', () => {
  const clock = audioClock(48_000);
  // 200 ppm slow for a minute: 12 ms.
  for (let i = 1; i <= 600; i += 1) clock.told(4800 * i, 100 * i * 1.0002);
  const now = clock.msAt(4800 * 600)!;
  expect(Math.abs(now - 60_012)).toBeLessThan(1.5);
});
