import { describe, expect, test } from 'vitest';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { sheetPdf } from '../../src/report/pdf/sheet-pdf.ts';
import { drawnPages } from './drawn-pages.ts';
import { longDay, revisedReport } from './printed-days.ts';
import { smallDay } from './report-day.ts';
import { reportFonts as fonts } from './report-fonts.ts';
import { squareLetters } from './square-letters.ts';

// The pages as they were when somebody last looked at them. A page that is meant to look otherwise is looked at again, and
// kept with `npx vitest run --project unit tests/report/pdf-pages.test.ts --update`.
const pages = (name: string): string => `pages/${name}.txt`;

describe('the pages as drawn', () => {
  test('of a small day', async () => {
    const { bytes } = reportPdf(reportOf(smallDay().phone.day()), { fonts });
    await expect(drawnPages(bytes)).toMatchFileSnapshot(pages('small-day'));
  });

  test('of a revision on letter paper, signed, with letters that the font has not', async () => {
    const { model, extras } = revisedReport();
    const { bytes, missing } = reportPdf(model, { fonts, paper: 'letter', ...extras });
    expect(missing).toEqual(['音']);
    await expect(drawnPages(bytes)).toMatchFileSnapshot(pages('revision'));
  });

  test('of a revision that went out in the form before, whatever letters the phone has', async () => {
    const { model, extras } = revisedReport(2);
    const { bytes, missing } = reportPdf(model, {
      fonts,
      letters: squareLetters,
      paper: 'letter',
      ...extras,
    });
    expect(missing).toEqual(['音']);
    await expect(drawnPages(bytes)).toMatchFileSnapshot(pages('revision-form-2'));
  });

  test('of a long day', async () => {
    const { bytes } = reportPdf(reportOf(longDay()), { fonts });
    await expect(drawnPages(bytes)).toMatchFileSnapshot(pages('long-day'));
  });

  test('of a sheet with cells of several lines', async () => {
    const cell = (at: number): string =>
      at % 7 === 0 ? `near ${at} ${'by way of the snake '.repeat(4)}` : `near ${at}`;
    const bytes = sheetPdf(
      {
        title: 'Wiring sheet',
        under: 'Salt Road · day 7',
        columns: [
          { title: 'Output', share: 2 },
          { title: 'Pins', share: 1 },
          { title: 'Input', share: 3 },
        ],
        rows: Array.from({ length: 45 }, (_, at) => [cell(at), '24 · 12 · 25', `AES ${at}`]),
        notes: ['Pin 13 not connected.', 'Shells to earth at one end only. '.repeat(6)],
        date: '2026-10-07',
      },
      { fonts, paper: 'letter' },
    );
    await expect(drawnPages(bytes)).toMatchFileSnapshot(pages('sheet'));
  });
});
