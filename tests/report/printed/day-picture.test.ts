import { describe, expect, test } from 'vitest';
import { reportOf } from '../../../src/report/model.ts';
import { dayPicture, pictureParts } from '../../../src/report/printed/day-picture.ts';
import { speaker } from '../../day/say.ts';
import { largeDay } from '../large-day.ts';
import { smallDay } from '../report-day.ts';

const small = () => dayPicture(reportOf(smallDay().phone.day()));

describe('the picture of the day', () => {
  test('has a column a take, which knows where a setup begins and what is circled', () => {
    expect(small().columns.map(({ text, circled, startsSetup }) => [text, circled, startsSetup])).toEqual([
      ['24A/1', false, false],
      ['24A/2', true, false],
      ['24B/1 FS', false, true],
      ['24B/1', false, false],
      ['24C/1 MOS', false, true],
      ['WT1', true, true],
    ]);
  });

  test('has bands that break where the chain changed and go on over MOS', () => {
    const bands = small().rows.map(({ number, bands }) => [
      number,
      ...bands.map(({ from, to, name, word }) => `${from}-${to} ${name} ${word}`.trim()),
    ]);
    expect(bands).toEqual([
      ['1', '0-5 Mix'],
      ['2', '0-5 Boom'],
      ['3', '0-1 Ines', '2-2 Tomas', '3-5 Tomas, Dora ganged'],
      ['4', '0-1 Dora', '2-2 Dora muted'],
    ]);
  });

  test('of a day without takes is empty', () => {
    expect(dayPicture(reportOf(speaker().day()))).toEqual({ columns: [], rows: [] });
  });
});

describe('a part of the picture', () => {
  test('holds what falls into it, and says what comes from before and goes on after', () => {
    const parts = pictureParts(small(), 4);
    expect(parts.map(({ first, columns }) => [first, columns.length])).toEqual([
      [0, 3],
      [3, 3],
    ]);
    expect(parts[1]!.rows[1]!.bands).toMatchObject([{ from: 0, to: 2, comesFrom: true, goesOn: false }]);
    expect(parts[0]!.rows[1]!.bands).toMatchObject([{ from: 0, to: 2, comesFrom: false, goesOn: true }]);
    expect(parts[1]!.rows[3]!.bands).toEqual([]);
  });

  test('together with the others shows every take once and every track at every take', () => {
    const picture = dayPicture(reportOf(largeDay({ takes: 50, tracks: 6 })));
    const parts = pictureParts(picture, 7);
    expect(parts.flatMap(({ columns }) => columns)).toEqual(picture.columns);
    for (const { columns, rows } of parts) {
      for (const { bands } of rows) {
        const covered = bands.flatMap(({ from, to }) =>
          Array.from({ length: to - from + 1 }, (_, at) => from + at),
        );
        expect(covered).toEqual(columns.map((_, at) => at));
      }
    }
  });
});
