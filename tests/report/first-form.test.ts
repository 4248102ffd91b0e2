import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { noteSent } from '../../src/commands/day/send-report.ts';
import type { Day } from '../../src/day/model.ts';
import { knownOf, sentReports } from '../../src/day/wrap/sent-reports.ts';
import type { ReportMade } from '../../src/facts/kinds/report-sent.ts';
import { REPORT_FORM } from '../../src/report/form.ts';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { csvColumnsFor } from '../../src/report/formats/csv-columns.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { type ModelOf, reportAgain } from '../../src/report/revision/report-to-send.ts';
import { take } from '../day/say.ts';
import { longDay, revisedReport } from './printed-days.ts';
import { smallDay } from './report-day.ts';

/** A report as an app that knew only the first form made it; never edited. */
const sentThen = (name: string): string =>
  readFileSync(join(import.meta.dirname, 'first-form', name), 'utf8');

describe('a report that went out in the first form', () => {
  const { model, extras } = revisedReport(1);

  test('is the same text and the same page again, to the byte', () => {
    expect(reportText(model, extras)).toBe(sentThen('revision.txt'));
    expect(reportHtml(model, extras)).toBe(sentThen('revision.html'));
    expect(reportText(reportOf(longDay(), [], 1))).toBe(sentThen('long-day.txt'));
  });

  test.each(['take', 'track'] as const)('is the same table of a line a %s again, to the byte', (lines) => {
    const table = reportCsv(model, { ...extras, lines, columns: csvColumnsFor(lines) });
    expect(table).toBe(sentThen(`all-columns-${lines}s.csv`));
  });

  test('keeps its guard: names that a spreadsheet would convert', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'roll-changed', roll: '001' });
    const columns = ['roll', 'notes'] as const;
    const rolls = (form?: number) => reportCsv(reportOf(phone.day(), [], form), { columns });
    phone.say(take('25', 1, 1));
    expect(rolls(1)).toContain(`"'001"`);
    expect(rolls()).toContain('"001"');
  });
});

test('a report remembers its form, and one without is of the first', () => {
  const modelOf: ModelOf = (day, _matters, form) => reportOf(day, [], form);
  const formAgain = (form: number | undefined): number => {
    const { phone } = smallDay();
    const made: ReportMade = { paper: 'a4', lines: 'take', columns: [], signature: '', matters: [], form };
    const said = noteSent({
      letter: 'A',
      route: 'copy',
      files: [],
      to: [],
      made,
      from: knownOf(phone.day()),
    });
    if (!said.ok) throw new Error(said.problem.code);
    phone.say(...said.value);
    const day: Day = phone.day();
    return reportAgain(day, sentReports(day)[0]!, modelOf).model.form;
  };
  expect([undefined, 1, 2, 3, 900].map(formAgain)).toEqual([1, 1, 2, 3, REPORT_FORM]);
});
