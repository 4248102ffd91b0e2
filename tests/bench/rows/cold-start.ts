import { generateSeason } from '../../../sample-days/generate.ts';
import type { Stage } from '../../browser/harness.ts';
import {
  DAY,
  dayOfTakes,
  median,
  pathOf,
  phoneWith,
  SLOWDOWN,
  spreadsheetStage,
  usableAt,
} from '../phone.ts';
import type { Row } from '../row.ts';
import { SPREADSHEET, spreadsheetPage } from '../spreadsheet.ts';

const RUNS = 7;
const BUDGET_MS = 1000;

/** Closes each browser and opens it again on a slow phone, several times in turn: a machine has quick and slow minutes. */
async function coldStarts(stages: readonly Stage[]): Promise<number[]> {
  const times = stages.map((): number[] => []);
  for (const stage of stages) {
    await stage.setSlowdown(SLOWDOWN);
    await stage.context.close();
  }
  for (let run = 0; run <= RUNS; run += 1) {
    for (const [at, stage] of stages.entries()) {
      await stage.relaunch();
      const usable = await usableAt(stage.page);
      await stage.context.close();
      if (run > 0) times[at]!.push(usable);
    }
  }
  for (const stage of stages) await stage.close();
  return times.map(median);
}

export async function rows(): Promise<Row[]> {
  const season = generateSeason({ seed: 9, takes: 60, tracks: 16, performers: 12 });
  const [day, sheet, inSeason] = await coldStarts([
    await phoneWith([dayOfTakes(200)]),
    await spreadsheetStage(await spreadsheetPage()),
    await phoneWith(season, pathOf('season-120')),
  ]);
  return [
    {
      work: `cold start at ${SLOWDOWN}x, no signal, to a usable day of 200 takes (${DAY}, seed 9)`,
      ours: day!,
      unit: 'ms',
      other: { by: `${SPREADSHEET}, 200 rows`, value: sheet! },
      budget: BUDGET_MS,
      ratioBudget: 3,
    },
    {
      work: 'cold start: the same, last of a season of 120 days, 60 takes each (seed 9)',
      ours: inSeason!,
      unit: 'ms',
      budget: BUDGET_MS,
    },
  ];
}
