import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { largeDay } from './large-day.ts';

describe('a day of 600 takes on 64 tracks with notes of 500 characters', () => {
  const day = largeDay({ takes: 600, tracks: 64, note: 'x '.repeat(250) });

  test('is reported in full, in text and in CSV', () => {
    const model = reportOf(day);
    const text = reportText(model);
    const csv = reportCsv(model, { lines: 'track' });
    expect(model.takes).toHaveLength(600);
    for (const { file } of model.takes) expect(text).toContain(file);
    expect(parse(csv, { record_delimiter: '\r\n' })).toHaveLength(1 + 600 * 64);
  }, 30_000);
});
