import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { onStage } from './harness.ts';
import { openSampleDay } from './places.ts';
import { startDay, tab, tap } from './tapping.ts';

const toAllDays = (page: Page): Promise<void> =>
  page.evaluate(() => {
    location.hash = '#/';
  });
const recipients = (page: Page) => page.getByRole('textbox', { name: /^To / });

test('nothing that is tried on the sample day is there on a real day, nor the other way round', async () => {
  await onStage({}, async (stage) => {
    const { page } = stage;
    await openSampleDay(stage);
    await tab(page, 'Wrap');
    await recipients(page).fill('nobody@example.org');
    await tap(page, 'Table (CSV)');
    await toAllDays(page);

    await tap(page, 'New day');
    const sheet = page.getByRole('dialog', { name: 'New day' });
    expect(await sheet.getByLabel('Production').inputValue()).toBe('');
    expect(await sheet.textContent()).not.toContain('Arnholt');
    await tap(page, 'Start the day');
    await page.locator('main[data-tab="rig"]').waitFor();
    await page.getByRole('heading', { name: 'Set up the rig' }).waitFor();
    expect(await page.locator('main').textContent()).not.toMatch(/Sample|Arnholt/);
    await tab(page, 'Wrap');
    expect(await recipients(page).inputValue()).toBe('');
    expect(
      await page.getByRole('button', { name: 'Table (CSV)', exact: true }).getAttribute('aria-pressed'),
    ).toBe('true');
    await recipients(page).fill('editors@example.org');
    await toAllDays(page);

    await tap(page, /^Sample/);
    await tab(page, 'Wrap');
    expect(await recipients(page).inputValue()).toBe('nobody@example.org');
  });
});

test('the recipients and the signature of one production are not those of another', async () => {
  await onStage({}, async (stage) => {
    const { page } = stage;
    await startDay(page, 'Harbour Lights');
    await tab(page, 'Wrap');
    await recipients(page).fill('editors@example.org');
    await toAllDays(page);
    await startDay(page, 'Salt Road');
    await tab(page, 'Wrap');
    expect(await recipients(page).inputValue()).toBe('');
    await toAllDays(page);
    await startDay(page, 'harbour lights ');
    await tab(page, 'Wrap');
    expect(await recipients(page).inputValue()).toBe('editors@example.org');
  });
});

test('recipients go with the last day of their production that is erased', async () => {
  await onStage({}, async (stage) => {
    const { page } = stage;
    const kept = (): Promise<string> => page.evaluate(() => JSON.stringify({ ...localStorage }));
    const eraseFirst = async (): Promise<void> => {
      await tap(page, /^More about/);
      await tap(page, 'Erase this day');
      await tap(page, 'Erase from this phone');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
    };
    await startDay(page);
    await tab(page, 'Wrap');
    await recipients(page).fill('editors@example.org');
    await toAllDays(page);
    await startDay(page);
    await toAllDays(page);
    await eraseFirst();
    expect(await kept()).toContain('editors@example.org');
    await eraseFirst();
    expect(await kept()).not.toContain('editors@example.org');
  });
});
