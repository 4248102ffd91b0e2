import { expect, test } from 'vitest';
import type { BoxHeard } from '../../../src/ltc/measure/compare.ts';
import { signedWords } from '../../../src/ui/upkeep/compare-words.ts';
import { type HeardBox, heardPairs, type Session } from '../../../src/ui/upkeep/heard-boxes.ts';

const session: Session = { ear: {} as Session['ear'], originMs: 0, originDoubtMs: 5 };
const heard = (frames: number, atMs: number, rate: BoxHeard['rate'] = '25'): HeardBox => ({
  session,
  box: { frames, rate, atMs, doubtMs: 0.1 },
});

test('every pair of the boxes heard is compared, in the order of the list', () => {
  // At 25 fps a frame is 40 ms: ten seconds on, 250 frames are expected.
  const boxes = new Map([
    ['camera', heard(502, 20_000)],
    ['recorder', heard(0, 0)],
    ['slate', heard(257.25, 10_000)],
  ]);
  const pairs = heardPairs(['recorder', 'slate', 'box', 'camera'], boxes);
  expect(pairs.map(({ ids }) => ids)).toEqual([
    ['recorder', 'slate'],
    ['recorder', 'camera'],
    ['slate', 'camera'],
  ]);
  const frames = pairs.map(({ apart }) => (apart.ok ? apart.value.frames : Number.NaN));
  for (const [at, ahead] of [7.25, 2, -5.25].entries()) expect(frames[at]).toBeCloseTo(ahead, 9);
  // 50 ppm of the time between, in ms, and what each may be wrong.
  const doubts = pairs.map(({ apart }) => (apart.ok ? apart.value.doubtMs : Number.NaN));
  for (const [at, ms] of [0.5, 1, 0.5].entries())
    expect(doubts[at]).toBeCloseTo(ms + Math.hypot(0.1, 0.1), 9);
});

test('of boxes at two rates the pair says why it is not compared', () => {
  const [pair] = heardPairs(
    ['a', 'b'],
    new Map([
      ['a', heard(0, 0)],
      ['b', heard(0, 0, '24')],
    ]),
  );
  expect(pair!.apart).toMatchObject({ ok: false, problem: { code: 'heard-rates-differ' } });
});

test('figures stand with their sign and their doubt', () => {
  expect(signedWords(7.253, 0.041, 2)).toBe('+7.25 ±\u00a00.04');
  expect(signedWords(-0.5, 0.1, 1)).toBe('−0.5 ±\u00a00.1');
  expect(signedWords(-0.004, 0.01, 2)).toBe('0.00 ±\u00a00.01');
});
