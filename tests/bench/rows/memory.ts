import type { Page } from 'playwright-core';
import type { GeneratedDay } from '../../../sample-days/generate.ts';
import { dayOfTakes, median, phoneWith } from '../phone.ts';
import type { Row } from '../row.ts';

const RUNS = 3;
const BUDGET_BYTES = 20 * 1024 * 1024;

/** What lives after the browser has thrown away what nobody holds. */
async function heapOf(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await session.detach();
  return usedSize;
}

export const rows = (): Promise<Row[]> => heapRows(dayOfTakes(600), 'a day of 600 takes');

/** The list of days, then the day of 600 takes with every tab visited. */
export async function heapRows(day: GeneratedDay, words: string): Promise<Row[]> {
  const stage = await phoneWith([day], { path: '/' });
  const more: number[] = [];
  for (let run = 0; run < RUNS; run += 1) {
    await stage.page.goto(`${stage.origin}/#/`);
    await stage.reload();
    await stage.page.locator('.day-row').first().waitFor();
    await stage.page.waitForTimeout(2000);
    const opened = await heapOf(stage.page);
    await stage.page.locator('.day-row .row').first().tap();
    for (const tab of ['Cast', 'Rig', 'Line', 'Wrap', 'Now']) {
      await stage.page.locator(`.tabs a:text-is("${tab}")`).tap();
      await stage.page.locator(`main[data-tab="${tab.toLowerCase()}"]`).waitFor();
      await stage.page.waitForTimeout(300);
    }
    more.push((await heapOf(stage.page)) - opened);
  }
  await stage.close();
  return [
    {
      work: `memory: heap of ${words}, every tab seen, over the page just opened`,
      ours: median(more),
      unit: 'bytes',
      budget: BUDGET_BYTES,
    },
  ];
}
