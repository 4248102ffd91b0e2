import { describe, expect, test } from 'vitest';
import type { DayPicture, PictureBand } from '../../../src/report/printed/day-picture.ts';
import {
  bandHeight,
  bandLabel,
  bandWidth,
  FOOT,
  HEAD,
  LETTER,
  labelRoom,
  NAME_SIZE,
  nameSize,
  rowHeight,
  slateLabels,
  takeNumber,
  wholeWords,
} from '../../../src/ui/picture/measures.ts';
import { nextPlace } from '../../../src/ui/picture/next-place.ts';
import { hatch, rungs, zigzag } from '../../../src/ui/picture/shapes.ts';

const band = (from: number, to: number): PictureBand => ({
  from,
  to,
  fromTake: `take-${from}`,
  state: 'single',
  name: 'Ines',
  word: '',
  typed: false,
});
const column = (at: number) => ({
  takeId: `take-${at}`,
  text: `24/${at}`,
  circled: false,
  kind: 'take' as const,
  startsSetup: false,
});

/** Six takes; track 1 is one band, track 2 two with a gap before the last take. */
const PICTURE: DayPicture = {
  columns: [0, 1, 2, 3, 4, 5].map(column),
  rows: [
    { track: 'tr1', number: '1', bands: [band(0, 5)] },
    { track: 'tr2', number: '2', bands: [band(0, 2), band(3, 4)] },
  ],
};

describe('the arrow keys on the picture of the day', () => {
  test.each([
    ['along the takes', { row: -1, at: 2 }, 'ArrowRight', { row: -1, at: 3 }],
    ['not past the last take', { row: -1, at: 5 }, 'ArrowRight', { row: -1, at: 5 }],
    ['down from a take to the band under it', { row: -1, at: 4 }, 'ArrowDown', { row: 0, at: 0 }],
    ['along the bands', { row: 1, at: 0 }, 'ArrowRight', { row: 1, at: 1 }],
    ['up from a band to the one above', { row: 1, at: 1 }, 'ArrowUp', { row: 0, at: 0 }],
    [
      'up from the first row to the take where the band begins',
      { row: 0, at: 0 },
      'ArrowUp',
      { row: -1, at: 0 },
    ],
    ['not below the last row', { row: 1, at: 1 }, 'ArrowDown', { row: 1, at: 1 }],
    ['to the last', { row: -1, at: 0 }, 'End', { row: -1, at: 5 }],
    ['to the first', { row: 1, at: 1 }, 'Home', { row: 1, at: 0 }],
  ])('lead %s', (_, place, key, next) => {
    expect(nextPlace(PICTURE, place, key)).toEqual(next);
  });

  test('lead over a gap to the last band of a row', () => {
    const late = { ...PICTURE, rows: [...PICTURE.rows, { track: 'tr3', number: '3', bands: [band(5, 5)] }] };
    expect(nextPlace(late, { row: 2, at: 0 }, 'ArrowUp')).toEqual({ row: 1, at: 1 });
  });

  test('leave other keys alone', () => {
    expect(nextPlace(PICTURE, { row: 0, at: 0 }, 'Tab')).toBeUndefined();
  });
});

describe('the names of the takes', () => {
  const named = (text: string, startsSetup = false) => ({ ...column(0), text, startsSetup });

  test('are slates over numbers: a slate stands once over its takes, a wild track has none', () => {
    const takes = [named('41/1 FS'), named('41/1'), named('41A/1', true), named('WT1', true)];
    expect(slateLabels(takes)).toEqual([
      { at: 0, text: '41', columns: 2 },
      { at: 2, text: '41A', columns: 1 },
    ]);
    expect(takes.map((take) => takeNumber(take, 60).number)).toEqual(['1 FS', '1', '1', 'WT1']);
  });

  test.each([30, 42, 60, 84, 126])('fit with their rings over columns of %d', (width) => {
    for (const text of ['41A/2', '41C/2 MOS', 'WT1', '41/12 FS']) {
      const { number, size } = takeNumber({ text }, width);
      expect(number.length * LETTER * (size / NAME_SIZE), text).toBeLessThanOrEqual(width - 8);
    }
  });
});

describe('the rows', () => {
  test.each([
    [328, 16],
    [532, 16],
    [328, 5],
  ])('stand all in a room %d high, %d of them', (room, rows) => {
    const row = rowHeight(room, rows);
    expect(HEAD + rows * row + FOOT).toBeLessThanOrEqual(room);
    expect(bandHeight(row)).toBeLessThan(row);
    expect(nameSize(row)).toBeLessThan(bandHeight(row));
  });

  test('are never too low for a name, nor needlessly tall', () => {
    expect(rowHeight(100, 32)).toBe(16);
    expect(rowHeight(900, 2)).toBe(48);
  });
});

describe('a band', () => {
  test('shows whole words of its name or none', () => {
    expect(wholeWords('Judge Havlík, Zuzu, clash', 400)).toBe('Judge Havlík, Zuzu, clash');
    expect(wholeWords('Judge Havlík, Zuzu, clash', 160)).toBe('Judge Havlík, Zuzu');
    expect(wholeWords('Conductor', 30)).toBe('');
    // Wide letters take two places: what is written never runs out of its band.
    expect(wholeWords('音声 収録', 60)).toBe('音声');
  });

  test('has room for its name to move along, and never out of it', () => {
    const wide = { ...band(0, 12), name: 'Ines' };
    expect(labelRoom(wide, 54)).toBeCloseTo(bandWidth(wide, 54) - 4 * LETTER - 14);
    for (const columns of [0, 1, 2, 5, 40]) {
      const some = { ...band(0, columns), name: 'Judge Havlík, Zuzu' };
      const words = bandLabel(some, 54).length * LETTER;
      const room = labelRoom(some, 54);
      expect(room).toBeGreaterThanOrEqual(0);
      if (room > 0) expect(7 + words + room).toBeLessThanOrEqual(bandWidth(some, 54));
    }
  });

  test.each([3, 21, 51, 1000])('%d wide has shapes of numbers that stay inside it', (width) => {
    for (const path of [zigzag(10, 20, width, 30), rungs(10, 20, width, 30), hatch(10, 20, width, 30)]) {
      expect(path).not.toMatch(/NaN|Infinity|undefined/);
    }
    const ends = [...hatch(10, 20, width, 30).matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)];
    expect(ends.length).toBeGreaterThan(1);
    for (const [, x, y] of ends) {
      expect(Number(x)).toBeGreaterThanOrEqual(10);
      expect(Number(x)).toBeLessThanOrEqual(10 + width);
      expect(Number(y)).toBeGreaterThanOrEqual(20);
      expect(Number(y)).toBeLessThanOrEqual(50);
    }
  });
});
