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

const RUNS = 5;
const BUDGET_MS = 1000;

/** Closes the browser and opens it again on a slow phone, several times. */
async function coldStarts(stage: Stage): Promise<number> {
  const times: number[] = [];
  await stage.setSlowdown(SLOWDOWN);
  for (let run = 0; run <= RUNS; run += 1) {
    await stage.relaunch();
    const at = await usableAt(stage.page);
    if (run > 0) times.push(at);
  }
  await stage.close();
  return median(times);
}

export async function rows(): Promise<Row[]> {
  const day = await coldStarts(await phoneWith([dayOfTakes(200)]));
  const sheet = await coldStarts(await spreadsheetStage(await spreadsheetPage()));
  const season = generateSeason({ seed: 9, takes: 60, tracks: 16, performers: 12 });
  const inSeason = await coldStarts(await phoneWith(season, pathOf('season-120')));
  return [
    {
      work: `cold start at ${SLOWDOWN}x, no signal, to a usable day of 200 takes (${DAY}, seed 9)`,
      ours: day,
      unit: 'ms',
      other: { by: `${SPREADSHEET}, 200 rows`, value: sheet },
      budget: BUDGET_MS,
      ratioBudget: 3,
    },
    {
      work: 'cold start: the same, last of a season of 120 days, 60 takes each (seed 9)',
      ours: inSeason,
      unit: 'ms',
      budget: BUDGET_MS,
    },
  ];
}
