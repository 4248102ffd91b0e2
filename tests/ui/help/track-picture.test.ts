import { describe, expect, test } from 'vitest';
import {
  HEIGHT,
  STRIP,
  STRIP_WIDTH,
  TRACK_PICTURES,
  type TrackPicture,
  WIDTH,
} from '../../../src/ui/help/track-picture.ts';
import { MARK_MEANS } from '../../../src/ui/words/means.ts';

/** Width of a letter at the size of the drawings; as wide as capitals are. */
const LETTER = 7.5;

const PICTURES: Readonly<Record<string, TrackPicture>> = TRACK_PICTURES;

/** Every point of a path of absolute moves and relative or absolute lines. */
function pointsOf(path: string): [number, number][] {
  let [x, y] = [0, 0];
  const points: [number, number][] = [];
  for (const [, letter = '', numbers = ''] of path.matchAll(/([MHVmhlv])([^MHVmhlv]*)/g)) {
    const values = numbers.trim().split(/[ ,]+/).map(Number);
    while (values.length > 0) {
      const next = values.shift()!;
      if (letter === 'H') x = next;
      else if (letter === 'V') y = next;
      else if (letter === 'h') x += next;
      else if (letter === 'v') y += next;
      else if (letter === 'M') [x, y] = [next, values.shift()!];
      else [x, y] = [x + next, y + values.shift()!];
      points.push([x, y]);
    }
  }
  return points;
}

test('every mark that Help explains has a picture, and no two look the same', () => {
  expect(Object.keys(PICTURES).sort()).toEqual(Object.keys(MARK_MEANS).sort());
  const drawn = Object.values(PICTURES).map((picture) => JSON.stringify(picture));
  expect(new Set(drawn).size).toBe(drawn.length);
});

describe.each(Object.entries(PICTURES))('the picture of %s', (_, { boxes, lines, sign = '' }) => {
  test('stays inside its frame, and its words inside their boxes', () => {
    for (const { x, y, width, height, text } of boxes) {
      expect(x).toBeGreaterThan(0);
      expect(y).toBeGreaterThan(0);
      expect(x + width).toBeLessThan(WIDTH);
      expect(y + height).toBeLessThan(HEIGHT);
      expect(text.length * LETTER).toBeLessThan(width);
    }
    for (const [x, y] of [...pointsOf(lines), ...pointsOf(sign)]) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(WIDTH);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(HEIGHT);
    }
  });

  test('has boxes that do not lie on each other', () => {
    for (const [at, a] of boxes.entries())
      for (const b of boxes.slice(at + 1))
        expect(a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y).toBe(true);
  });
});

test('a gang and a clash show two on one track, told apart by their sign alone', () => {
  const { gang, clash } = PICTURES;
  expect(gang?.boxes.map(({ text }) => text)).toEqual(['Emil', 'Zuzu', 'track 4']);
  expect([clash?.boxes, clash?.lines]).toEqual([gang?.boxes, gang?.lines]);
  expect(clash?.sign).not.toBe(gang?.sign);
});

test('nothing reaches a free input, and nobody is on an idle one', () => {
  const missing = (state: string) => PICTURES[state]?.boxes.filter(({ look }) => look === 'missing').length;
  expect([missing('free'), missing('idle'), missing('single')]).toEqual([1, 1, 0]);
  const startOf = (state: string) => Math.min(...pointsOf(PICTURES[state]?.lines ?? '').map(([x]) => x));
  const endOfFirst = (state: string) => PICTURES[state]!.boxes[0]!.x + PICTURES[state]!.boxes[0]!.width;
  expect(startOf('free')).toBeGreaterThan(endOfFirst('free'));
  expect(startOf('idle')).toBeGreaterThan(endOfFirst('idle'));
  expect(startOf('single')).toBe(endOfFirst('single'));
});

test('the strip has its mark in the gap before the first take, and now after the last', () => {
  const [first, ...rest] = STRIP.takes;
  expect(STRIP.markX).toBeGreaterThan(0);
  expect(STRIP.markX).toBeLessThan(first!.x);
  let end = first!.x + first!.width;
  for (const { x, width } of rest) {
    expect(x).toBeGreaterThan(end);
    end = x + width;
  }
  expect(STRIP.nowX - 1.5 * LETTER).toBeGreaterThan(end);
  expect(STRIP.nowX + 1.5 * LETTER).toBeLessThan(STRIP_WIDTH);
});
