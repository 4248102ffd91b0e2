import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { FIRST_FORM, SECOND_FORM } from '../../src/report/form.ts';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { checkedDay, longDay, revisedReport } from './printed-days.ts';
import { reportFonts as fonts } from './report-fonts.ts';

/** SHA-256 of the pages as an app that knew only that form made them; never edited. */
const sentThen = (form: string): string =>
  readFileSync(join(import.meta.dirname, form, 'pages-sha256.txt'), 'utf8');

test.each([
  [FIRST_FORM, 'first-form'],
  [SECOND_FORM, 'second-form'],
])('pages that went out in form %i are the same bytes again, their id too', (form, folder) => {
  const { model, extras } = revisedReport(form);
  const pages = [
    ['long-day', reportPdf(reportOf(longDay(), [], form), { fonts })],
    ['checked', reportPdf(reportOf(checkedDay(), [], form), { fonts })],
    ['revision', reportPdf(model, { fonts, ...extras })],
  ] as const;
  const sums = pages.map(
    ([name, { bytes }]) => `${name} ${createHash('sha256').update(bytes).digest('hex')}\n`,
  );
  expect(sums.join('')).toBe(sentThen(folder));
});
