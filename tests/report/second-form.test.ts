import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { changesCsv, reportCsv } from '../../src/report/formats/csv.ts';
import { csvColumnsFor } from '../../src/report/formats/csv-columns.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportMailto } from '../../src/report/formats/mailto.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { drawnPages } from './drawn-pages.ts';
import { longDay, revisedBackedUp, revisedReport } from './printed-days.ts';
import { reportFonts as fonts } from './report-fonts.ts';

/** A report as an app that knew only two forms made it; never edited. */
const sentThen = (name: string): string =>
  readFileSync(join(import.meta.dirname, 'second-form', name), 'utf8');

describe.each([
  ['of one recorder', 'revision', revisedReport],
  ['of two recorders', 'backed-up', revisedBackedUp],
] as const)('a report %s that went out in the second form', (_, name, revised) => {
  const { model, extras } = revised(2);

  test('is the same text, page and mail again, to the byte', () => {
    expect(reportText(model, extras)).toBe(sentThen(`${name}.txt`));
    expect(reportHtml(model, extras)).toBe(sentThen(`${name}.html`));
    const { href, leftOut } = reportMailto(model, ['editor@example.org'], 'Salt Road', extras);
    expect(`${href}\n${leftOut.parts.join(', ')}; ${leftOut.takes.length} takes\n`).toBe(
      sentThen(`${name}-link.txt`),
    );
  });

  test.each(['take', 'track'] as const)('is the same table of a line a %s again, to the byte', (lines) => {
    expect(reportCsv(model, { ...extras, lines })).toBe(sentThen(`${name}-${lines}s.csv`));
    const all = reportCsv(model, { ...extras, lines, columns: csvColumnsFor(lines) });
    expect(all).toBe(sentThen(`${name}-all-columns-${lines}s.csv`));
    expect(changesCsv(extras.revision!)).toBe(sentThen(`${name}-changes.csv`));
  });

  test('is drawn on the pages as it was', () => {
    const { bytes } = reportPdf(model, { fonts, ...extras });
    expect(drawnPages(bytes)).toBe(sentThen(`${name}-pages.txt`));
  });
});

test('a long report that went out in the second form is the same text again, to the byte', () => {
  expect(reportText(reportOf(longDay(), [], 2))).toBe(sentThen('long-day.txt'));
});
