import Papa from 'papaparse';
import type { Page } from 'playwright-core';
import { type GeneratedDay, generateSeason } from '../../../sample-days/generate.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { reportCsv } from '../../../src/report/formats/csv.ts';
import { reportOf } from '../../../src/report/model.ts';
import type { Stage } from '../../browser/harness.ts';
import { DAY, dayOfTakes, median, pathOf, phoneWith, SLOWDOWN, spreadsheetWith, usableAt } from '../phone.ts';
import type { Row } from '../row.ts';
import { SPREADSHEET, spreadsheetPage } from '../spreadsheet.ts';

const RUNS = 7;
const TAKES = 200;

/** A day as a log in a spreadsheet has it: a head, and a row for every take with a column for every track. */
function logRows({ day, facts }: GeneratedDay): string[][] {
  const csv = reportCsv(reportOf(foldDay(day, facts)));
  return Papa.parse<string[]>(csv.trimEnd(), { newline: '\r\n' }).data;
}

/** Throws where the app does not show the last of these takes as the last. */
async function checkDay(page: Page, rows: readonly string[][]): Promise<void> {
  const of = (column: string): string => rows.at(-1)![rows[0]!.indexOf(column)]!;
  const wanted = `${of('Slate')}/${of('Take')}`;
  const shown = await page.evaluate(() => document.querySelector('.dock-last')?.textContent);
  if (!shown?.includes(wanted)) throw new Error(`The last take is ${wanted}, and the app shows ${shown}`);
}

/** Throws where the spreadsheet holds anything else. */
async function checkSheet(page: Page, rows: readonly string[][]): Promise<void> {
  const cells = await page.evaluate(() => globalThis.cells());
  if (JSON.stringify(cells) !== JSON.stringify(rows)) throw new Error('The spreadsheet holds something else');
}

interface Started {
  readonly stage: Stage;
  /** Looks at what the first start, which is not counted, has on its screen. */
  readonly check?: (page: Page) => Promise<void>;
}

/** Closes each browser and opens it again on a slow phone, several times in turn: a machine has quick and slow minutes. */
async function coldStarts(started: readonly Started[]): Promise<number[]> {
  const times = started.map((): number[] => []);
  for (const { stage } of started) {
    await stage.setSlowdown(SLOWDOWN);
    await stage.context.close();
  }
  for (let run = 0; run <= RUNS; run += 1) {
    for (const [at, { stage, check }] of started.entries()) {
      await stage.relaunch();
      const usable = await usableAt(stage.page);
      if (run === 0) await check?.(stage.page);
      else times[at]!.push(usable);
      await stage.context.close();
    }
  }
  for (const { stage } of started) await stage.close();
  return times.map(median);
}

/** What a day in the app takes to a first row, then its log in the spreadsheet, then other phones, all in turn. */
export async function besideSheet(day: GeneratedDay, ...others: readonly Stage[]): Promise<number[]> {
  const log = logRows(day);
  return await coldStarts([
    { stage: await phoneWith([day]), check: (page) => checkDay(page, log) },
    { stage: await spreadsheetWith(log, await spreadsheetPage()), check: (page) => checkSheet(page, log) },
    ...others.map((stage) => ({ stage })),
  ]);
}

/** No time is asked for: that differs by as much from one shared machine to the next, and from hour to hour. */
export const startRow = (on: string, ours: number, sheet: number): Row => ({
  work: `cold start at ${SLOWDOWN}x, no signal, to a usable day of ${TAKES} takes (${DAY}, seed 9)${on}`,
  ours,
  unit: 'ms',
  other: { by: `${SPREADSHEET}, their log drawn`, value: sheet },
  ratioBudget: 2.5,
});

export async function rows(): Promise<Row[]> {
  const season = generateSeason({ seed: 9, takes: 60, tracks: 16, performers: 12 });
  const inTurn = await phoneWith(season, { path: pathOf('season-120') });
  const [day, sheet, inSeason] = await besideSheet(dayOfTakes(TAKES), inTurn);
  return [
    startRow('', day!, sheet!),
    {
      work: 'cold start: the same, last of a season of 120 days, 60 takes each (seed 9)',
      ours: inSeason!,
      unit: 'ms',
      other: { by: 'the single day above', value: day! },
      ratioBudget: 1 / 1.2,
    },
  ];
}
