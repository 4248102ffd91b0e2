import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { onStage, type Stage } from '../browser/harness.ts';
import { type Look, wear } from '../browser/looks-and-sizes.ts';
import { openSampleDay } from '../browser/places.ts';

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first();
const link = (page: Page, name: string) => page.getByRole('link', { name, exact: true });

/** Opens the first screen of the sample day, at about four in the morning, when the sample night ends. */
const onSampleNight = (look: Look, work: (stage: Stage) => Promise<void>): Promise<void> =>
  onStage({ clock: '2026-11-20T03:05:00Z', colorScheme: 'light' }, async (stage) => {
    await openSampleDay(stage);
    await stage.page.locator('.rows .row').first().waitFor();
    await stage.page.getByRole('status').filter({ hasText: /\w/ }).waitFor({ state: 'hidden' });
    await wear(stage.page, look);
    await work(stage);
  });

/** Takes the pictures that README shows, and gives how many. */
export async function takeReadmePictures(folder: string): Promise<number> {
  mkdirSync(folder, { recursive: true });
  let taken = 0;
  const shoot = async (page: Page, name: string): Promise<void> => {
    await page.screenshot({ path: join(folder, `${name}.png`), animations: 'disabled', scale: 'css' });
    taken += 1;
  };
  await onSampleNight('light', async ({ page }) => {
    await shoot(page, 'now');
    await button(page, /Rozália/).tap();
    await page.getByRole('dialog').waitFor();
    await shoot(page, 'give');
    await button(page, 'Close').tap();
    for (const tab of ['Line', 'Wrap', 'Cast', 'Rig']) {
      await link(page, tab).tap();
      await page.locator(`main[data-tab="${tab.toLowerCase()}"]`).waitFor();
      await page.waitForTimeout(400);
      await shoot(page, tab.toLowerCase());
    }
    await link(page, 'Wrap').tap();
    await button(page, /^Picture of the day/).tap();
    await button(page, 'Smaller').tap();
    await page.waitForTimeout(300);
    await shoot(page, 'picture');
    await link(page, 'Cast').tap();
    await page.getByRole('link', { name: 'Next setup' }).tap();
    for (const name of [/^Emil/, /^Dr Brandão/]) await button(page, name).tap();
    await page.locator('main.body').evaluate((body) => body.scrollTo(0, 0));
    await page.waitForTimeout(300);
    await shoot(page, 'plan');
  });
  await onSampleNight('dim', ({ page }) => shoot(page, 'dim'));
  return taken;
}
