import { afterAll, beforeAll, expect, test } from 'vitest';
import { openStage, type Stage } from './harness.ts';
import { openSampleDay } from './places.ts';
import { openDayId } from './stored-facts.ts';

/** Notes how many rows the first picture of a list has. */
function noteFirstRows(): void {
  new MutationObserver((_, watch) => {
    const rows = document.querySelectorAll('.body li').length;
    if (rows === 0) return;
    watch.disconnect();
    Object.assign(globalThis, { firstRows: rows });
  }).observe(document, { childList: true, subtree: true });
}

let stage: Stage;
let day: string;
beforeAll(async () => {
  stage = await openStage();
  await openSampleDay(stage);
  day = openDayId(stage.page);
});
afterAll(() => stage.close());

test.each([
  ['now', 390, 844],
  ['now', 320, 568],
  ['now', 844, 390],
  ['now', 1024, 768],
  ['cast', 390, 844],
  ['cast', 844, 390],
  ['line', 320, 568],
  ['line', 390, 844],
  ['line', 430, 932],
  ['line', 1024, 768],
  ['line', 844, 390],
])('%s draws at %i x %i first what is in sight, and then the rest', async (tab, width, height) => {
  const page = await stage.context.newPage();
  await page.addInitScript(noteFirstRows);
  await page.setViewportSize({ width, height });
  await page.goto(`${stage.origin}/#/day/${day}/${tab}`);
  await page.locator('.body li').first().waitFor();
  await page.evaluate(() => new Promise((done) => requestIdleCallback(done)));
  const { first, inSight, all } = await page.evaluate(() => {
    const rows = [...document.querySelectorAll('.body li')];
    const list = document.querySelector('.body')!.getBoundingClientRect();
    return {
      first: (globalThis as unknown as { firstRows: number }).firstRows,
      inSight: rows.filter((row) => row.getBoundingClientRect().top < list.bottom).length,
      all: rows.length,
    };
  });
  await page.close();
  expect(first).toBeGreaterThanOrEqual(inSight);
  expect(all).toBeGreaterThanOrEqual(inSight);
  // What a small phone does not show, its first picture does not wait for.
  if (width < 390) expect(first).toBeLessThan(all);
});
