import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readCallSheet } from '../../../src/callsheet/call-sheet.ts';
import { withSeason } from '../../../src/commands/cast/season-cast.ts';
import type { Season } from '../../../src/day/season/season.ts';
import { sheets } from '../../callsheet/sheet-maker.ts';
import { speaker } from '../../day/say.ts';

const NOBODY = speaker().day();
const seasonOf = (...numbers: string[]): Season =>
  numbers.map((number) => ({
    ...{ number, part: `Part ${number}`, person: `Person ${number}`, date: '2026-03-12' },
    ...{ mics: [], micsDate: '' },
  }));

/** Sheets whose list of performers is missing, whole or in part, and seasons that know some of the numbers. */
const cases = fc.record({
  made: sheets({ headings: ['scenes', 'cast'], noise: true }),
  dropped: fc.uniqueArray(fc.integer({ min: 1, max: 8 }), { maxLength: 8 }),
  known: fc.uniqueArray(fc.integer({ min: 1, max: 12 }), { maxLength: 12 }),
});

describe('a sheet with what earlier days know', () => {
  test('invents nobody and loses nobody: only numbers of its scenes that were known are added (seed 61)', () => {
    let added = 0;
    fc.assert(
      fc.property(cases, ({ made, dropped, known }) => {
        const gone = made.cast.filter(({ number }) => dropped.includes(Number(number)));
        const text = made.text
          .split('\n')
          .filter((line) => !gone.some(({ person }) => line.includes(person)))
          .join('\n');
        const plain = readCallSheet(text);
        const sheet = withSeason(plain, NOBODY, seasonOf(...known.map(String)));
        const listed = sheet.cast.filter(({ line }) => line > 0);
        expect(listed.map(({ number, part, person }) => [number, part, person])).toEqual(
          plain.cast.map(({ number, part, person }) => [number, part, person]),
        );
        const more = sheet.cast.filter(({ line }) => line < 0).map(({ number }) => number);
        const inScenes = new Set(plain.scenes.flatMap(({ cast }) => cast));
        const wanted = [...inScenes].filter(
          (number) => known.includes(Number(number)) && !plain.cast.some((one) => one.number === number),
        );
        expect([...more].sort()).toEqual(wanted.sort());
        expect([sheet.unread, sheet.scenes, sheet.aside]).toEqual([plain.unread, plain.scenes, plain.aside]);
        added += more.length;
      }),
      { seed: 61, numRuns: 120 },
    );
    expect(added).toBeGreaterThan(50);
  });

  test.each([
    ['1, 2', ['1'], ['1, 2']],
    ['1, 2, 3', ['1', '2'], ['1, 2, 3']],
    ['1. INES - Anna Berg\n1, 2', ['1'], ['1, 2']],
    ['1. INES - Anna Berg\n2. TOMAS - Jon Holm\n1, 2', ['1', '2'], ['1, 2']],
    ['1. INES - Anna Berg\n1 SWF 0630', ['1', '2'], ['1 SWF 0630']],
  ])('leaves %j unread where one of its numbers is nobody, or all are there', (text, known, unread) => {
    const day = speaker();
    if (!text.includes('INES'))
      day.say({ kind: 'voice-described', voice: 'i', fields: { part: 'Ines', number: '1' } });
    const sheet = withSeason(readCallSheet(text), day.day(), seasonOf(...known));
    expect(sheet.unread.map((line) => line.text)).toEqual(unread);
  });

  test('adds whoever of a line is not in the cast of the day', () => {
    const day = speaker();
    day.say({ kind: 'voice-described', voice: 'i', fields: { part: 'Ines', number: '1' } });
    const sheet = withSeason(readCallSheet('1, 2'), day.day(), seasonOf('1', '2'));
    expect([sheet.cast.map(({ number }) => number), sheet.unread]).toEqual([['2'], []]);
  });

  test('counts every line of numbers that was read to one of its people', () => {
    const sheet = withSeason(readCallSheet('CAST\n1, 2\n5 SWF 0630 0715'), NOBODY, seasonOf('1', '2', '5'));
    expect(sheet.cast.map(({ number, more, onSet }) => [number, more, onSet])).toEqual([
      ['1', [2], ''],
      ['2', [2], ''],
      ['5', [3], '0715'],
    ]);
    expect(sheet.unread).toEqual([]);
  });

  test('of two thousand lines of numbers is answered within two seconds of work', () => {
    const line = Array.from({ length: 120 }, (_, at) => at + 1).join(',');
    const read = readCallSheet(`CAST\n${`${line}\n`.repeat(1900)}`);
    const season = seasonOf(...Array.from({ length: 90 }, (_, at) => String(at + 1)));
    const from = process.cpuUsage();
    withSeason(read, NOBODY, season);
    expect(process.cpuUsage(from).user / 1000).toBeLessThan(2000);
  });
});
