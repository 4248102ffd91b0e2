import type { Page } from 'playwright-core';
import { describe, test } from 'vitest';
import { onStage } from './harness.ts';
import { startDay, tab, takeOne, tap } from './tapping.ts';

/** What the polite live region says, which is also what stands on the screen. */
const told = (page: Page) => page.locator('.live [role="status"]');

describe('undo says what it undid', () => {
  test('of what was said on Now and on Cast, and redo what it did again, by finger and by key', async () => {
    await onStage({}, async (stage) => {
      const { page } = stage;
      await startDay(page);
      await takeOne(page);
      await tab(page, 'Cast');
      await tap(page, /^Add/);
      const sheet = page.getByRole('dialog');
      await sheet.getByLabel('Part').fill('Anna');
      await sheet.getByRole('button', { name: 'Add', exact: true }).tap();
      await sheet.waitFor({ state: 'detached' });
      await tab(page, 'Line');
      await tap(page, 'Undo');
      await told(page).getByText('Undone: Anna added', { exact: true }).waitFor();
      await tap(page, 'Undo');
      await told(page).getByText('Undone: cut of 1/1', { exact: true }).waitFor();
      await page.locator('.line-foot').getByRole('button', { name: 'Redo' }).focus();
      await page.keyboard.press('Enter');
      await told(page).getByText('Redone: cut of 1/1', { exact: true }).waitFor();
      await page.keyboard.press('Enter');
      await told(page).getByText('Redone: Anna added', { exact: true }).waitFor();
      await stage.screenshot('undone');
    });
  });

  test('of a take that was taken back in its sheet, which names it when it comes back', async () => {
    await onStage({}, async ({ page }) => {
      await startDay(page);
      await takeOne(page);
      await tab(page, 'Line');
      const row = page.locator('.line-row').first();
      await row.tap();
      await tap(page, 'Remove');
      await told(page).getByText('1/1 removed', { exact: true }).waitFor();
      await tap(page, 'Undo');
      await told(page).getByText('Undone: take 1/1 removed', { exact: true }).waitFor();
      await tap(page, 'Redo');
      await told(page).getByText('Redone: take 1/1 removed', { exact: true }).waitFor();
      await row.tap();
      await tap(page, 'Bring back');
      await told(page).getByText('1/1 brought back', { exact: true }).waitFor();
    });
  });
});
