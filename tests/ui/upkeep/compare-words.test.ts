import { describe, expect, test } from 'vitest';
import type { Ear } from '../../../src/app/ear/ear.ts';
import { driftWords, offsetWords } from '../../../src/ui/upkeep/compare-words.ts';
import { boxesApart, boxHeard, sessionOf } from '../../../src/ui/upkeep/heard-boxes.ts';

test('an offset in frames and milliseconds, each with its doubt', () => {
  const offset = { frames: 0.12, ms: 4.8, doubtFrames: 0.04, doubtMs: 1.6 };
  expect(offsetWords(offset)).toBe('0.12 frames ahead ± 0.04 (4.8 ms ± 1.6 ms)');
  expect(offsetWords({ ...offset, frames: -7.25, ms: -290 })).toBe(
    '7.25 frames behind ± 0.04 (290 ms ± 1.6 ms)',
  );
  expect(offsetWords({ ...offset, frames: -0.001, ms: -0.04 })).toBe('in step ± 0.04 (0.0 ms ± 1.6 ms)');
});

test('a drift with when a frame is reached, or that none is seen', () => {
  const clock = (ms: number): string => `at ${ms}`;
  expect(driftWords({ drift: undefined }, clock)).toBe('');
  expect(driftWords({ drift: { ppm: -1.24, doubtPpm: 0.4, dueAtMs: 7 } }, clock)).toBe(
    'drifts 1.2 ppm ± 0.4, a frame apart at at 7',
  );
  expect(driftWords({ drift: { ppm: 0.1, doubtPpm: 0.4, dueAtMs: undefined } }, clock)).toBe(
    'no drift seen beyond 0.4 ppm',
  );
});

describe('boxes heard', () => {
  const earAt = (originMs: number, doubt = 2): Ear & { origin: number } => {
    const ear = {
      origin: originMs,
      sampleRate: 48_000,
      listenAnew: () => {},
      msAt: (sample: number) => ear.origin + sample / 48,
      doubtMs: () => doubt,
      close: () => {},
    };
    return ear;
  };
  const tie = (frames: number, start: number) => ({
    frames,
    rate: '25' as const,
    start,
    heard: 100,
    spread: 0.48,
  });
  const apart = (...boxes: readonly [ReturnType<typeof boxHeard>, ReturnType<typeof boxHeard>]) => {
    const found = boxesApart(...boxes);
    if (!found.ok) throw new Error(found.problem.code);
    return found.value;
  };

  test('through one opening of the microphone are compared by the clock of the sound card alone', () => {
    const session = sessionOf(earAt(1000, 20))!;
    const found = apart(boxHeard(tie(1000, 0), session), boxHeard(tie(1253, 480_000), session));
    expect(found.frames).toBeCloseTo(3, 9);
    // 50 ppm of ten seconds are 0.5 ms; each box adds 0.05 ms and twice the spread over the root of the count, 0.002 ms.
    expect(found.doubtMs).toBeCloseTo(0.5 + Math.hypot(0.052, 0.052), 9);
  });

  test('through two openings are less certain', () => {
    const [one, other] = [sessionOf(earAt(1000))!, sessionOf(earAt(11_000))!];
    const found = apart(boxHeard(tie(1000, 0), one), boxHeard(tie(1253, 0), other));
    expect(found.frames).toBeCloseTo(3, 9);
    expect(found.doubtMs).toBeGreaterThan(0.5 + Math.hypot(2, 2));
  });

  test('sound lost on the way is a doubt as large', () => {
    const ear = earAt(1000);
    const session = sessionOf(ear)!;
    const before = boxHeard(tie(1000, 0), session);
    ear.origin += 30;
    expect(boxHeard(tie(1253, 480_000), session).box.doubtMs - before.box.doubtMs).toBeCloseTo(30 - 4, 9);
  });
});
