import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { importTable } from '../../../src/report/formats/import-table.ts';
import { type ReportModel, reportOf } from '../../../src/report/model.ts';
import { speaker, take } from '../../day/say.ts';
import { anyDay } from '../any-day.ts';
import { largeDay } from '../large-day.ts';
import { movedDay } from '../printed-days.ts';
import { smallDay } from '../report-day.ts';

type Row = Record<string, string>;

/** The table as two npm packages read it, which must read the same. */
function read(model: ReportModel): Row[] {
  const text = importTable(model);
  const rows: Row[] = parse(text, { columns: true, record_delimiter: '\r\n' });
  const other = Papa.parse<Row>(text, { header: true, newline: '\r\n', skipEmptyLines: true });
  expect(other.errors).toEqual([]);
  expect(other.data).toEqual(rows);
  return rows;
}

const FIXED = [
  ...['Production', 'Date', 'Roll', 'Recorder', 'Scene', 'Slate', 'Take', 'File', 'Start', 'End'],
  ...['Length in frames', 'Frame rate', 'Sample rate', 'Bits', 'Circled', 'Status', 'Note'],
];

describe('the table for import', () => {
  test('of the small day is as written by hand, from its first line on', () => {
    const rows = read(reportOf(smallDay().phone.day()));
    expect(Object.keys(rows[0]!)).toEqual([
      ...FIXED,
      ...['Track 1', 'Track 2', 'Track 3', 'Track 4', 'Track 5'],
      ...['Track 1 state', 'Track 2 state', 'Track 3 state', 'Track 4 state', 'Track 5 state'],
    ]);
    expect(rows.map((row) => Object.values(row).slice(2, 17))).toEqual([
      [
        '7A',
        '8-track bag recorder',
        '24',
        '24A',
        '1',
        '24AT1.wav',
        '01:00:00:00',
        '01:00:10:00',
        '250',
        '25',
        '48000',
        '24',
        '',
        '',
        '',
      ],
      [
        '7A',
        '8-track bag recorder',
        '24',
        '24A',
        '2',
        '24AT2.wav',
        '01:00:40:00',
        '01:00:50:00',
        '250',
        '25',
        '48000',
        '24',
        'yes',
        '',
        'Plane at the end; track 3: rustle',
      ],
      [
        '7A',
        '8-track bag recorder',
        '24',
        '24B',
        '1',
        '24BT1FS.wav',
        '01:00:00:00',
        '01:00:10:00',
        '250',
        '25',
        '48000',
        '24',
        '',
        'false start',
        '',
      ],
      [
        '7A',
        '8-track bag recorder',
        '24',
        '24B',
        '1',
        '24BT1.wav',
        '01:00:00:00',
        '01:00:10:00',
        '250',
        '25',
        '48000',
        '24',
        '',
        'NG, tail slate',
        '',
      ],
      ['7A', '8-track bag recorder', '24', '24C', '1', '', '', '', '', '25', '48000', '24', '', 'MOS', ''],
      [
        '7A',
        '8-track bag recorder',
        '24',
        'WT',
        '1',
        'WT1.wav',
        '01:00:00:00',
        '01:01:00:00',
        '1500',
        '25',
        '48000',
        '24',
        'yes',
        'wild track',
        '',
      ],
    ]);
    expect(
      rows.map((row) => [row['Track 3'], row['Track 3 state'], row['Track 4'], row['Track 4 state']]),
    ).toEqual([
      ['Ines', '', 'Dora', ''],
      ['Ines', '', 'Dora', ''],
      ['Tomas', '', 'Dora', 'muted'],
      ['Tomas, Dora', 'ganged', '', ''],
      ['', '', '', ''],
      ['Tomas, Dora', 'ganged', '', ''],
    ]);
    expect(new Set(rows.map((row) => `${row.Production} ${row.Date}`))).toEqual(
      new Set(['Salt Road 2026-10-07']),
    );
  });

  test('has the same columns whatever changes during the day, with what changes in them', () => {
    const phone = speaker();
    phone.say({ kind: 'recorder-set', settings: { timecodeRate: '25' } });
    phone.say(
      take('24', 0, 1, { start: { frames: 90_000, rate: '25' }, length: { frames: 250, rate: '25' } }),
    );
    phone.say({
      kind: 'recorder-set',
      settings: { timecodeRate: '29.97DF', sampleRate: 96_000, bitDepth: '32f' },
    });
    const drop = { start: { frames: 107_892, rate: '29.97DF' }, length: { frames: 300, rate: '29.97DF' } };
    phone.say(take('24', 0, 2, drop));
    const rows = read(reportOf(phone.day()));
    expect(Object.keys(rows[0]!).slice(0, FIXED.length)).toEqual(FIXED);
    // SMPTE ST 12-1: 01:00:00;00 drop-frame is frame 107,892.
    expect(rows.map((row) => FIXED.slice(8, 14).map((title) => row[title]))).toEqual([
      ['01:00:00:00', '01:00:10:00', '250', '25', '48000', '24'],
      ['01:00:00;00', '01:00:10;00', '300', '29.97DF', '96000', '32f'],
    ]);
  });

  test('has a line for each recorder of a take, with its own roll, file, rate and tracks', () => {
    const rows = read(reportOf(movedDay().phone.day())).filter(
      ({ Slate, Take }) => `${Slate}/${Take}` === '26/1',
    );
    expect(
      rows.map((row) => [
        row.Recorder,
        row.Roll,
        row.File,
        row.Start,
        row['Length in frames'],
        row['Track 3'],
      ]),
    ).toEqual([
      ['Cart', '7A', '26T1.wav', '01:06:00:00', '250', 'Ines, Dora'],
      // 10 s at 24; nobody wrote down what a recorder at another rate showed.
      ['Bag', 'C1', 'C1-003.wav', '', '240', 'Ines'],
      ['Backup', 'B1', '26T1.wav', '01:06:00:00', '250', 'Ines, Dora'],
    ]);
  });

  test('of any day gives the take list again, field for field, and one line a record (seed 91)', () => {
    let takes = 0;
    fc.assert(
      fc.property(anyDay, (day) => {
        const model = reportOf(day);
        if (model.takes.length === 0) return;
        const rows = read(model);
        takes += rows.length;
        expect(importTable(model).split('\r\n')).toHaveLength(rows.length + 2);
        expect(
          rows.map((row) => [
            row.Roll,
            row.Scene,
            row.File,
            row.Start,
            row.End,
            row.Circled === 'yes',
            row['Length in frames'],
          ]),
        ).toEqual(
          model.takes.map(({ roll, scene, files, start, end, circled, exact }) => [
            roll,
            scene,
            files.map(({ name }) => name).join('; '),
            start,
            end,
            circled,
            exact.length ? String(exact.length.frames) : '',
          ]),
        );
        for (const [at, row] of rows.entries()) {
          const { slate, take: number, tracks } = model.takes[at]!;
          expect(slate ? `${row.Slate} ${row.Take}` : `${row.Slate}${row.Take}`).toBe(
            slate ? `${slate} ${number}` : number,
          );
          for (const { number: track, name } of tracks.filter(
            (one, place) => tracks.findLastIndex(({ number: same }) => same === one.number) === place,
          ))
            expect(row[`Track ${track}`]?.replaceAll(/[\u2068\u2069]/g, '')).toBe(
              name.replaceAll(/[\u2068\u2069]/g, ''),
            );
        }
      }),
      { seed: 91, numRuns: 200 },
    );
    expect(takes).toBeGreaterThan(100);
  });

  test('keeps a long day whole', () => {
    const model = reportOf(largeDay({ takes: 200, tracks: 16 }));
    const rows = read(model);
    expect(rows).toHaveLength(200);
    expect(rows.at(-1)!['Track 16']).toBe(model.takes.at(-1)!.tracks.at(-1)!.name);
  });
});
