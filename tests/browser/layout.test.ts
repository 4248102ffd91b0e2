import type { CDPSession, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { onStage, type Stage } from './harness.ts';
import { openSampleDay } from './places.ts';

const CLOCK = '2026-11-20T03:05:00Z';
const SMALL = { width: 360, height: 640 };
const USUAL = { width: 390, height: 844 };

/** Sets the size of all text, as a phone's setting does. */
async function setText({ context, page }: Stage, percent: number): Promise<void> {
  const session: CDPSession = await context.newCDPSession(page);
  await session.send('Page.enable');
  await session.send('Page.setFontSizes', {
    fontSizes: { standard: (16 * percent) / 100, fixed: (13 * percent) / 100 },
  });
  const size = await page.evaluate(() => Number.parseFloat(getComputedStyle(document.body).fontSize));
  expect(size).toBe((16 * percent) / 100);
}

const heightOf = async (page: Page, selector: string): Promise<number> =>
  (await page.locator(selector).boundingBox())!.height;

/** Rows of the list that are whole between what stands above it and the dock. */
const wholeRows = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const head = document.querySelector('.head')!.getBoundingClientRect();
    const foot = document.querySelector('.foot')!.getBoundingClientRect();
    return [...document.querySelectorAll('main .rows .row')].filter((row) => {
      const { top, bottom, height } = row.getBoundingClientRect();
      return height > 0 && top >= Math.max(0, head.bottom) - 0.5 && bottom <= foot.top + 0.5;
    }).length;
  });

describe('the screen is for its rows', () => {
  test.each([
    { viewport: SMALL, rows: 7 },
    { viewport: USUAL, rows: 11 },
  ])(
    'Now shows $rows whole rows of the sample day at $viewport.width x $viewport.height',
    async ({ viewport, rows }) => {
      await onStage({ viewport, clock: CLOCK }, async (stage) => {
        await openSampleDay(stage);
        await expect.poll(() => wholeRows(stage.page)).toBeGreaterThanOrEqual(rows);
      });
    },
  );

  test('the head is at most 72 px high, and 100 px with text at 200 %, however long the title', async () => {
    await onStage({ viewport: SMALL, clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await page.getByRole('button', { name: /^About this day/ }).tap();
      const production = 'The Long and Winding Return of the Lighthouse Keepers';
      await page.getByLabel('Production').fill(production);
      await page.getByRole('button', { name: 'Save' }).tap();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      expect(await heightOf(page, '.head')).toBeLessThanOrEqual(72);
      const title = page.locator('.head-day strong');
      expect(await title.textContent()).toContain(production);
      // One line of it, and the rest in the sheet that it opens.
      expect(await title.evaluate((one) => one.scrollWidth > one.clientWidth)).toBe(true);
      await title.tap();
      await page.getByRole('dialog').getByText(production).first().waitFor();
      await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      await setText(stage, 200);
      expect(await heightOf(page, '.head')).toBeLessThanOrEqual(100);
    });
  });

  test('with text at 200 % the sync button is whole, and four rows are seen at once', async () => {
    await onStage({ viewport: SMALL, clock: CLOCK }, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await setText(stage, 200);
      const cut = await page.locator('.head-clock, .head-clock :not(.unseen)').evaluateAll((all) =>
        all
          .filter((one) => {
            const { left, right, bottom } = one.getBoundingClientRect();
            const head = document.querySelector('.head')!.getBoundingClientRect();
            const isCut = one.clientWidth > 0 && one.scrollWidth > one.clientWidth + 1;
            return left < 0 || right > innerWidth || bottom > head.bottom || isCut;
          })
          .map((one) => `${one.className} ${one.textContent}`),
      );
      expect(cut).toEqual([]);
      // The page scrolls as a whole at this size; only the dock stays.
      await page.locator('main .rows').evaluate((list) => list.scrollIntoView({ block: 'start' }));
      await expect.poll(() => wholeRows(page)).toBeGreaterThanOrEqual(4);
    });
  });
});
