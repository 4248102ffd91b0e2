import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { unguard } from '../../src/report/formats/csv-field.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { takeList } from '../../src/report/list/take-list.ts';
import { type ReportModel, reportOf } from '../../src/report/model.ts';
import { footText, type ReportPdf, reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { matterText } from '../../src/report/printed/matter-words.ts';
import { printedTake } from '../../src/report/printed/printed-take.ts';
import { headLines, totalsLines } from '../../src/report/printed/words.ts';
import { anyDay } from '../report/any-day.ts';
import { largeDay } from '../report/large-day.ts';
import { smallDay } from '../report/report-day.ts';
import { reportFonts } from '../report/report-fonts.ts';
import { needPoppler, pageTexts } from './poppler.ts';

/** Without blanks, and without the isolates around names from right to left, which are an element on the page. */
const squeezed = (text: string): string => text.replaceAll(/[\s\u2068\u2069]+/g, '');

/**
 * Everything a report must say, in order, each part a list of texts without blanks. That the tracks of every take
 * follow from what the list says of them is held in tests/report/list/take-list.test.ts.
 */
function saidBy(model: ReportModel): { head: string[]; takes: string[][] } {
  const pairs = [...headLines(model.head), ...totalsLines(model)];
  return {
    head: [...pairs.map(([, text]) => text), ...model.open.map(matterText)].map(squeezed),
    takes: takeList(model, {}).map(({ text, file, start, end, length, words, names, also, lists, notes }) =>
      [
        ...[text, file, start, end, length, words.join(', '), names, ...also],
        ...lists.flat().map((unit) => unit.text),
        ...notes,
      ]
        .map(squeezed)
        .filter(Boolean),
    ),
  };
}

/** Looks for the texts one after the other. */
function expectInOrder(haystack: string, needles: readonly string[]): void {
  let at = 0;
  for (const needle of needles) {
    const found = haystack.indexOf(needle, at);
    if (found < 0) expect.fail(`${needle} is missing after ${haystack.slice(Math.max(0, at - 60), at)}`);
    at = found + needle.length;
  }
}

function inText(model: ReportModel): void {
  // Marks that a mail has and a list of words has not.
  const text = squeezed(reportText(model));
  const { head, takes } = saidBy(model);
  for (const said of head) expect(text).toContain(said);
  expectInOrder(text.slice(Math.max(0, text.indexOf('TAKES'))), takes.flat());
}

function inHtml(model: ReportModel): void {
  const plain = reportHtml(model)
    .replaceAll(/<br\/>/g, '\n')
    .replaceAll(/<[^>]*>/g, '')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');
  const { head, takes } = saidBy(model);
  const text = squeezed(plain);
  for (const said of head) expect(text).toContain(said);
  expectInOrder(text, takes.flat());
}

function inCsv(model: ReportModel): void {
  const columns = ['called', 'file', 'start', 'circled', 'status', 'tracks', 'notes'] as const;
  const records: string[][] = parse(reportCsv(model, { columns }), { record_delimiter: '\r\n' });
  expect(records.slice(1).map((record) => record.map((cell) => squeezed(unguard(cell))))).toEqual(
    model.takes.map((take) => {
      const { text, start, circled, lists, notes } = printedTake(take);
      const status = printedTake({ ...take, circled: false, scene: '' }).words;
      return [
        text,
        take.files.map(({ name }) => name).join('; '),
        start,
        circled ? 'circled' : '',
        status.join(', '),
        lists.flat().join('; '),
        notes.join('\n'),
      ].map(squeezed);
    }),
  );
}

/** The pages' text without their heads and feet; what the fonts lack stands as a question mark. */
function inPdf(model: ReportModel, pdf: ReportPdf): void {
  const pages = pageTexts(pdf.bytes).map((page) => squeezed(page.normalize('NFC')));
  expect(pages).toHaveLength(pdf.pages);
  for (const [at, page] of pages.entries()) expect(page).toContain(`page${at + 1}of${pages.length}`);
  const lacking = new Set(pdf.missing);
  const drawn = (text: string) =>
    [...text.normalize('NFC')]
      .map((character) => (lacking.has(character) ? '?' : character))
      .join('')
      .replaceAll(/\p{Cf}/gu, '');
  const foot = squeezed(drawn(footText(model)));
  const text = pages
    .map((page, at) =>
      withoutEnds(page, 'TakeFileStartEndLength', `${foot}Soundreport·page${at + 1}of${pages.length}`),
    )
    .join('');
  const { head, takes } = saidBy(model);
  for (const said of head) expect(text).toContain(drawn(said));
  expectInOrder(text, takes.flat().map(drawn));
}

const withoutEnds = (text: string, start: string, end: string): string =>
  text.slice(text.startsWith(start) ? start.length : 0, text.endsWith(end) ? -end.length : undefined);

describe('text, CSV, HTML and PDF tell the same lines', () => {
  beforeAll(needPoppler, 300_000);

  test('of the small day', () => {
    const model = reportOf(smallDay().phone.day());
    inText(model);
    inHtml(model);
    inCsv(model);
    inPdf(model, reportPdf(model, { fonts: reportFonts }));
  });

  test('of a day of many pages', () => {
    const model = reportOf(largeDay({ takes: 60, tracks: 16 }));
    inText(model);
    inHtml(model);
    inCsv(model);
    inPdf(model, reportPdf(model, { fonts: reportFonts, paper: 'letter' }));
  }, 30_000);

  test('of any day, hostile words included (seed 24)', () => {
    fc.assert(
      fc.property(anyDay, (day) => {
        const model = reportOf(day);
        inText(model);
        inHtml(model);
        inCsv(model);
      }),
      { seed: 24, numRuns: 150 },
    );
  }, 60_000);

  test('of any day as PDF read back by pdftotext (seed 25)', () => {
    fc.assert(
      fc.property(anyDay, (day) => {
        const model = reportOf(day);
        inPdf(model, reportPdf(model, { fonts: reportFonts }));
      }),
      { seed: 25, numRuns: 12 },
    );
  }, 60_000);
});
