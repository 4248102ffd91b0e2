import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { csvText, reportCsv } from '../../../src/report/formats/csv.ts';
import { csvColumnsFor } from '../../../src/report/formats/csv-columns.ts';
import { guardFormula, unguard } from '../../../src/report/formats/csv-field.ts';
import { reportOf } from '../../../src/report/model.ts';
import { durationText } from '../../../src/report/printed/figures.ts';
import { speaker, take } from '../../day/say.ts';
import { dayWithMixesByWord } from '../mixes-by-word.ts';
import { smallDay } from '../report-day.ts';

const readBack = (text: string): string[][] => parse(text, { bom: true, record_delimiter: '\r\n' });

// RFC 4180, section 2, rules 5 to 7; every field is quoted, which rule 5 allows.
describe('a CSV record', () => {
  test.each([
    ['21A', '"21A"'],
    ['a,b', '"a,b"'],
    ['12" lens', '"12"" lens"'],
    ['line1\r\nline2', '"line1\r\nline2"'],
    ['', '""'],
    ['"', '""""'],
  ])('holds %j as %j', (field, encoded) => {
    expect(csvText([[field]])).toBe(`${encoded}\r\n`);
    expect(readBack(csvText([[field, 'next']]))).toEqual([[field, 'next']]);
  });

  test('ends in CR LF, with as many fields as the header and no comma after the last (RFC 4180, section 2)', () => {
    expect(
      csvText([
        ['a', 'b'],
        ['1', '2'],
      ]),
    ).toBe('"a","b"\r\n"1","2"\r\n');
  });

  test('is what the npm package papaparse 5 writes of the same fields (fast-check seed 51)', () => {
    const field = fc.oneof(fc.string(), fc.constantFrom('"', '""', ',', '\r\n', ' a ', "'=1", '\ufeff'));
    const records = fc
      .integer({ min: 1, max: 6 })
      .chain((width) => fc.array(fc.array(field, { minLength: width, maxLength: width }), { minLength: 1 }));
    fc.assert(
      fc.property(records, (all) => {
        expect(csvText(all)).toBe(`${Papa.unparse(all, { quotes: true, newline: '\r\n' })}\r\n`);
      }),
      { seed: 51, numRuns: 300 },
    );
  });
});

test('a length is printed to the nearest second everywhere, half a second up', () => {
  // 0.48 s, 0.52 s and 59.52 s at 25; a minute and a half second at 24.
  const lengths = [
    [12, '25', '0:00', '00:00:00'],
    [13, '25', '0:01', '00:00:01'],
    [1488, '25', '1:00', '00:01:00'],
    [1452, '24', '1:01', '00:01:01'],
    [1451, '24', '1:00', '00:01:00'],
  ] as const;
  const phone = speaker();
  for (const [at, [frames, rate]] of lengths.entries())
    phone.say(take('24', 1, at + 1, { length: { frames, rate } }));
  const model = reportOf(phone.day());
  expect(model.takes.map(({ length }) => length)).toEqual(lengths.map(([, , printed]) => printed));
  expect(model.takes.map(({ lengthMs }) => durationText(lengthMs!))).toEqual(
    lengths.map(([, , printed]) => printed),
  );
  const [head, ...rows] = readBack(reportCsv(model));
  const column = head!.indexOf('Length');
  expect(rows.map((row) => row[column])).toEqual(lengths.map(([, , , cell]) => cell));
});

describe('the guard', () => {
  // OWASP, "CSV Injection".
  test.each([
    ['=1+2";=1+2', `"'=1+2"";=1+2"`],
    [`=1+2'" ;,=1+2`, `"'=1+2'"" ;,=1+2"`],
  ])('writes %j as %j', (field, encoded) => {
    expect(csvText([[guardFormula(field)]])).toBe(`${encoded}\r\n`);
  });

  // First characters: OWASP, "CSV Injection"; OWASP ASVS 5.0, 1.2.10.
  test.each(['=', '+', '-', '@', '\t', '\r', '\n', '\0', '＝', '＋', '－', '＠', ' ='])(
    'stands before %j',
    (first) => {
      expect(guardFormula(`${first}x`)).toBe(`'${first}x`);
    },
  );

  test('stands before a note that begins with a sign', () => {
    expect(guardFormula('-12 dB pad')).toBe("'-12 dB pad");
    expect(guardFormula('+48V')).toBe("'+48V");
  });

  // Common practice, no source: names of rolls, scenes, slates, takes and files. A leading quote runs nothing.
  test.each(['001', '1E2', '3-4', '21/33', '3.4', 'MAR4', '1-2-26', 'TRUE', "'68", '24B', '24BT3.wav', ''])(
    'leaves %s as it is, for nothing in it would be run',
    (name) => {
      expect(guardFormula(name)).toBe(name);
    },
  );

  test('comes off again and leaves what was there (seed 11)', () => {
    const text = fc.oneof(fc.string({ unit: 'binary' }), fc.stringMatching(/^['=+\-@\t 0-9E./]{0,6}$/));
    const seen = new Set<string>();
    fc.assert(
      fc.property(text, (value) => {
        expect(unguard(guardFormula(value))).toBe(value);
        seen.add(guardFormula(value) === value ? 'left' : 'guarded');
      }),
      { seed: 11, numRuns: 500 },
    );
    expect(seen.size).toBe(2);
  });
});

describe('the CSV report', () => {
  const model = reportOf(smallDay().phone.day());

  test('has one line a take, read back by a parser that is not ours', () => {
    const [header, ...records] = readBack(reportCsv(model));
    expect(header).toEqual([
      ...['File', 'Roll', 'Scene', 'Slate', 'Take', 'Start', 'Length', 'Circled', 'Status'],
      ...['Track 1', 'Track 2', 'Track 3', 'Track 4', 'Notes'],
    ]);
    expect(records).toHaveLength(6);
    expect(records[1]).toEqual([
      ...['24AT2.wav', '7A', '24', '24A', '2', '01:00:40:00', '00:00:10', 'circled', ''],
      ...['Mix', 'Boom', 'Ines', 'Dora', 'Plane at the end\ntrack 3: rustle'],
    ]);
    expect(records[4]).toEqual(['', '7A', '24', '24C', '1', '', '', '', 'MOS', '', '', '', '', '']);
  });

  test('has one line a track and take, and one for a take without tracks', () => {
    const records = readBack(reportCsv(model, { lines: 'track' }));
    expect(records).toHaveLength(1 + 4 + 4 + 4 + 3 + 1 + 3);
    expect(records[7]!.slice(9)).toEqual(['3', 'Ines', 'alone', 'Ines', 'rustle', 'Plane at the end']);
    expect(records[12]!.slice(9)).toEqual(['4', 'Dora', 'muted', 'Dora (muted)', '', '']);
  });

  test('keeps a note on a track that carries nothing', () => {
    const { phone, first } = smallDay();
    phone.say({ kind: 'note-added', take: first, track: 'tr5', text: 'hum' });
    const records = readBack(reportCsv(reportOf(phone.day()), { lines: 'track' }));
    expect(records[1]!.at(-1)).toBe('track 5: hum');
  });

  test('has the columns the mixer asks for, in that order, and no others', () => {
    const csv = reportCsv(model, { columns: ['called', 'tracks', 'file'] });
    expect(readBack(csv).slice(0, 2)).toEqual([
      ['Called', 'Tracks', 'File'],
      ['24A/1', '1 Mix; 2 Boom; 3 Ines; 4 Dora', '24AT1.wav'],
    ]);
  });

  test('leaves out columns that do not fit its lines', () => {
    expect(readBack(reportCsv(model, { columns: ['file', 'state'] }))[0]).toEqual(['File']);
    expect(csvColumnsFor('track')).not.toContain('each-track');
    expect(csvColumnsFor('take')).not.toContain('state');
  });

  test('has no two columns of one title: mixes L and R beside isos that count from 1, a column asked for twice', () => {
    const { phone } = dayWithMixesByWord();
    const [titles, first] = readBack(reportCsv(reportOf(phone.day())));
    expect(titles!.filter((title) => title.startsWith('Track'))).toEqual([
      'Track L',
      'Track R',
      'Track 1',
      'Track 2',
      'Track 3',
    ]);
    expect(new Set(titles).size).toBe(titles!.length);
    expect(first!.slice(titles!.indexOf('Track L'), titles!.indexOf('Track 3') + 1)).toEqual([
      'Mix',
      'Mix',
      'Boom',
      'Ines',
      'Dora',
    ]);
    const [twice] = readBack(reportCsv(reportOf(phone.day()), { columns: ['file', 'take', 'file'] }));
    expect(twice).toEqual(['File', 'Take']);
    const tracks = readBack(
      reportCsv(reportOf(phone.day()), { lines: 'track', columns: ['called', 'track'] }),
    );
    const numbers = tracks.filter(([called]) => called === '24A/1').map(([, number]) => number);
    expect(numbers).toEqual(['L', 'R', '1', '2', '3']);
  });

  test('begins with a byte-order mark only when asked', () => {
    expect(reportCsv(model, { byteOrderMark: true }).startsWith('\ufeff"File"')).toBe(true);
    expect(reportCsv(model).startsWith('"File"')).toBe(true);
  });

  test('hands over rolls, scenes and names of digits as they were said', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'roll-changed', roll: '001' });
    phone.say(take('3-4', 0, 1), { kind: 'voice-described', voice: 'dora', fields: { part: '007' } });
    const columns = ['roll', 'scene', 'slate', 'take', 'each-track'] as const;
    for (const guard of ['formulas', 'none'] as const) {
      const records = readBack(reportCsv(reportOf(phone.day()), { columns, guard }));
      expect(records.at(-1)).toEqual(['001', '3-4', '3-4', '1', 'Mix', 'Boom', 'Tomas, 007 (ganged)', '']);
    }
  });

  test('for import has no guard: a note is what was typed', () => {
    const { phone, first } = smallDay();
    phone.say({ kind: 'note-added', take: first, text: '-12 dB pad' });
    const notes = (guard: 'formulas' | 'none') =>
      readBack(reportCsv(reportOf(phone.day()), { columns: ['notes'], guard }))[1];
    expect(notes('none')).toEqual(['-12 dB pad']);
    expect(notes('formulas')).toEqual(["'-12 dB pad"]);
  });

  test('stays a table whatever is written into a day', () => {
    const { phone, first } = smallDay();
    const hostile = '=cmd|\' /C calc\'!A0","<script>alert(1)</script>\r\n@SUM(1+1)\u202e';
    phone.say({ kind: 'note-added', take: first, text: hostile });
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: hostile } });
    phone.say({ kind: 'roll-changed', roll: hostile });
    for (const lines of ['take', 'track'] as const) {
      const records = readBack(reportCsv(reportOf(phone.day()), { lines }));
      expect(new Set(records.map((record) => record.length)).size).toBe(1);
      expect(records.flat().filter((cell) => /^[\s]*[=+\-@]/.test(cell))).toEqual([]);
    }
  });
});
