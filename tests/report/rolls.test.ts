import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, test } from 'vitest';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { unguard } from '../../src/report/formats/csv-field.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { type ReportModel, reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { needPoppler, pageTexts } from '../oracle/poppler.ts';
import { reportFonts } from './report-fonts.ts';

/** Takes 24A/1 and on; a roll is called before those that name one. A kind stands behind a blank. */
function dayOf(...rolls: (string | null)[]): ReportModel {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  for (const [at, said] of rolls.entries()) {
    const [roll, kind = 'take'] = said?.split(' ') ?? [];
    if (roll) phone.say({ kind: 'roll-changed', roll });
    phone.say(take('24', 1, at + 1, { kind }));
  }
  return reportOf(phone.day());
}

const cells = (model: ReportModel, lines: 'take' | 'track'): [string, string][] => {
  const records: string[][] = parse(reportCsv(model, { lines, columns: ['called', 'roll'] }));
  return [...new Map(records.slice(1).map(([called, roll]) => [called!, unguard(roll!)]))];
};

/** What each format says of rolls, in its order: the head's line, and what stands before which take. */
const inText = (model: ReportModel): string[] =>
  reportText(model)
    .split('\n')
    .filter((line) => /^(Rolls? |No roll)|^[ (]24A\/\d/.test(line))
    .map((line) => line.replace(/^[ (](24A\/\d).*/, '$1').replaceAll(/\s+/g, ' '));

const inHtml = (model: ReportModel): string[] =>
  [
    ...reportHtml(model).matchAll(
      /<ul class="brief"><li><bdi>(Rolls?) ([^<·]*)(?= ·)|<tr class="roll"><th[^>]*><bdi>([^<]*)|<th scope="row"[^>]*><bdi>(24A\/\d)/g,
    ),
  ].map(([, label, rolls, line, called]) => (label ? `${label} ${rolls}` : (line ?? called!)));

function inPages(model: ReportModel): string[] {
  const text = pageTexts(reportPdf(model, { fonts: reportFonts }).bytes)
    .join('\n')
    .split('\nTakes\n')
    .at(-1)!;
  return text
    .split('\n')
    .filter((line) => /^(No roll|Roll \S+)$|^24A\/\d.* (\S+\.wav|no file)/.test(line))
    .map((line) => line.replace(/^(24A\/\d).*/, '$1'));
}

describe('the roll of a take is the same in every output', () => {
  beforeAll(needPoppler, 300_000);

  test('of takes before the first roll was named: they have none, and all say so', () => {
    const model = dayOf(null, null, '7A', null);
    const told = ['No roll', '24A/1', '24A/2', 'Roll 7A', '24A/3', '24A/4'];
    const head = 'Roll 7A; 2 takes with no roll';
    expect(inText(model)).toEqual([head, ...told]);
    expect(inHtml(model)).toEqual([head, ...told]);
    expect(inPages(model)).toEqual(told);
    for (const lines of ['take', 'track'] as const)
      expect(cells(model, lines)).toEqual([
        ['24A/1', 'no roll'],
        ['24A/2', 'no roll'],
        ['24A/3', '7A'],
        ['24A/4', '7A'],
      ]);
  });

  test('where rolls change around MOS takes, which have a roll as others do', () => {
    const model = dayOf('7A mos', null, '7B mos', null);
    const told = ['Roll 7A', '24A/1', '24A/2', 'Roll 7B', '24A/3', '24A/4'];
    expect(inText(model)).toEqual(['Rolls 7A, 7B', ...told]);
    expect(inHtml(model)).toEqual(['Rolls 7A, 7B', ...told]);
    expect(inPages(model)).toEqual(told);
  });

  test('where the day has one roll, which stands in the head alone', () => {
    const model = dayOf('7A', null);
    const told = ['Roll 7A', '24A/1', '24A/2'];
    expect(inText(model)).toEqual(told);
    expect(inHtml(model)).toEqual(told);
    expect(cells(model, 'take').map(([, roll]) => roll)).toEqual(['7A', '7A']);
  });

  test('where nobody named a roll, of which nothing is said', () => {
    const model = dayOf(null, null);
    expect(inText(model)).toEqual(['24A/1', '24A/2']);
    expect(inHtml(model)).toEqual(['24A/1', '24A/2']);
    expect(cells(model, 'take').map(([, roll]) => roll)).toEqual(['', '']);
  });
});

test('takes past midnight have the next date, before them and in the table', () => {
  // 23:57, 23:58 and 00:01 on the phone's clock, two hours east.
  const phone = speaker('phonea', Date.UTC(2026, 9, 7, 21, 55));
  const rolledAt = (minute: number) => Date.UTC(2026, 9, 7, 21, minute);
  for (const [at, minute] of [57, 58, 61].entries())
    phone.say(take('24', 1, at + 1, { rolledAt: rolledAt(minute) }));
  const model = reportOf(phone.day());
  expect(model.takes.map(({ rollHeading }) => rollHeading)).toEqual(['2026-10-07', '', '2026-10-08']);
  const records: string[][] = parse(reportCsv(model, { columns: ['called', 'date'] }));
  expect(records.slice(1)).toEqual([
    ['24A/1', '2026-10-07'],
    ['24A/2', '2026-10-07'],
    ['24A/3', '2026-10-08'],
  ]);
});
