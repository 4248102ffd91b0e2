import { describe, expect, test } from 'vitest';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { csvColumnsFor } from '../../src/report/formats/csv-columns.ts';
import { mailDraft } from '../../src/report/formats/eml.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { mailtoHref, reportMailto } from '../../src/report/formats/mailto.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { longDay, revisedReport } from './printed-days.ts';
import { smallDay } from './report-day.ts';

// The report in every format as it was when somebody last read it. One that is meant to say something else is read again, and
// kept with `npx vitest run --project unit tests/report/printed.test.ts --update`.
const kept = (name: string): string => `printed/${name}`;

describe('the report as printed', () => {
  const { model, extras } = revisedReport();

  test('as text, of a revision and of a long day', async () => {
    await expect(reportText(model, extras)).toMatchFileSnapshot(kept('revision.txt'));
    await expect(reportText(reportOf(longDay()))).toMatchFileSnapshot(kept('long-day.txt'));
  });

  test('as a page, of a revision', async () => {
    await expect(reportHtml(model, extras)).toMatchFileSnapshot(kept('revision.html'));
  });

  test('as a table of takes and of tracks, with its own columns and with all', async () => {
    const small = reportOf(smallDay().phone.day());
    for (const lines of ['take', 'track'] as const) {
      const columns = csvColumnsFor(lines);
      await expect(reportCsv(small, { lines })).toMatchFileSnapshot(kept(`${lines}s.csv`));
      await expect(reportCsv(model, { ...extras, lines, columns })).toMatchFileSnapshot(
        kept(`all-columns-${lines}s.csv`),
      );
    }
  });

  test('as a mail with its files, and as links of several lengths', async () => {
    const draft = mailDraft({
      from: 'sound@example.org',
      to: ['editor@example.org', ' assistant@example.org '],
      subject: 'Salt Road day 7, rättad',
      text: 'Hej,\n\n= the report =\n.',
      files: [
        {
          name: 'Salt Road – day 7.csv',
          type: 'text/csv; charset=utf-8',
          bytes: new Uint8Array([1, 2, 255]),
        },
      ],
      at: Date.UTC(2026, 9, 7, 16, 45),
      zone: -210,
    });
    await expect(draft.ok && draft.value).toMatchFileSnapshot(kept('draft.eml'));
    const links = [400, 800, 1100, 1400, 100_000].map((budget) => {
      const { href, leftOut } = reportMailto(model, ['editor@example.org'], 'Salt Road', {
        ...extras,
        budget,
      });
      return `${href}\n${leftOut.parts.join(', ')}; ${leftOut.takes.length} takes\n`;
    });
    await expect(links.join('\n')).toMatchFileSnapshot(kept('links.txt'));
    expect(mailtoHref([' a@b.org ', '', 'c@d.org'], 'x y', '')).toBe(
      'mailto:a@b.org,c@d.org?subject=x%20y&body=',
    );
  });
});
