import { describe, expect, test } from 'vitest';
import { type Stroke, strokesOf, strokesPath, strokesText } from '../../src/shared/strokes.ts';
import { LONGEST_STROKES, STROKES_TEXT } from '../../src/shared/strokes-text.ts';

const LINE: Stroke = [
  [10, 20],
  [40, 15],
  [52, 23],
];
const DOT: Stroke = [[500, 200]];

describe('strokes', () => {
  test('are kept as text and come back', () => {
    expect(strokesText([LINE, DOT])).toBe('10,20 30,-5 12,8;500,200');
    expect(strokesOf(strokesText([LINE, DOT]))).toEqual([LINE, DOT]);
    expect(strokesOf('')).toEqual([]);
  });

  test('outside the field end at its edge, and points that are close are left out', () => {
    expect(
      strokesOf(
        strokesText([
          [
            [-50, 900],
            [1, 398],
            [2, 397],
            [1200, 399],
          ],
        ]),
      ),
    ).toEqual([
      [
        [0, 400],
        [1000, 399],
      ],
    ]);
  });

  test('of whatever length stay within their limit and in their shape', () => {
    const scribble = Array.from(
      { length: 40 },
      (_, at): Stroke =>
        Array.from({ length: 200 }, (_, step) => [(step * 37 + at * 11) % 1000, (step * 91) % 400]),
    );
    const text = strokesText(scribble);
    expect(text.length).toBeLessThanOrEqual(LONGEST_STROKES);
    expect(text.length).toBeGreaterThan(LONGEST_STROKES / 2);
    expect(STROKES_TEXT.test(text)).toBe(true);
  });

  test('are drawn as one path, a dot as a line of no length', () => {
    expect(strokesPath([LINE, DOT])).toBe('M10 20L40 15L52 23M500 200L500 200');
  });
});
