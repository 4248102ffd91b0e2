import { beforeAll, describe, expect, test } from 'vitest';
import { type PrintedSheet, sheetPdf } from '../../src/report/pdf/sheet-pdf.ts';
import { needPoppler, pageTexts } from '../oracle/poppler.ts';
import { reportFonts as fonts } from './report-fonts.ts';

const SHEET: PrintedSheet = {
  title: 'Wiring sheet',
  under: 'Harbour Lights · Day 4',
  columns: [
    { title: 'Output', share: 2 },
    { title: 'Pins', share: 1 },
    { title: 'Input', share: 1 },
  ],
  rows: Array.from({ length: 90 }, (_, at) => [`near ${at + 1}`, '24 · 12 · 25', `AES ${at + 1}`]),
  notes: ['Pin 13 not connected.'],
  date: '2026-10-07',
};

describe('a printed sheet', () => {
  beforeAll(needPoppler);

  test('has every row once, the head of the table on every page, and its notes at the end', () => {
    const pages = pageTexts(sheetPdf(SHEET, { fonts }));
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) expect(page).toContain('Output');
    const lines = pages.join('\n').split('\n');
    for (const [output, , input] of SHEET.rows) {
      expect(
        lines.filter((line) => line.startsWith(`${output} `) && line.endsWith(` ${input}`)),
      ).toHaveLength(1);
    }
    expect(pages.at(-1)).toContain('Pin 13 not connected.');
  });

  test('gives the same bytes for the same sheet', () => {
    expect(sheetPdf(SHEET, { fonts })).toEqual(sheetPdf(SHEET, { fonts }));
  });
});
