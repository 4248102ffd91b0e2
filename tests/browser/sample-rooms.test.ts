import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { onStage } from './harness.ts';
import { openSampleDay } from './places.ts';
import { startDay, tap } from './tapping.ts';

const toPage = (page: Page, name: string): Promise<void> =>
  page.evaluate((to) => {
    location.hash = location.hash.replace(/\w+$/, to);
  }, name);

describe('the sample day, opened on any day of the year', () => {
  test('shows something in every room, with no signal', async () => {
    await onStage(
      { worker: true, clock: '2027-06-01T16:00:00Z', timezone: 'America/Los_Angeles' },
      async (stage) => {
        const { page } = stage;
        const body = page.locator('main.body');
        await stage.waitOfflineReady();
        await openSampleDay(stage);
        await stage.killServer();
        await page.locator('.head-clock strong').filter({ hasText: '04:10:' }).waitFor();
        const rooms: [string, RegExp][] = [
          ['radio', /2 hits.*Video link B/s],
          ['upkeep', /3 things due.*A1.*Camera B.*Card 2/s],
          ['plan', /Siân.*keeps A4/s],
        ];
        for (const [room, says] of rooms) {
          await toPage(page, room);
          await expect.poll(() => body.textContent(), { message: room }).toMatch(says);
        }
      },
    );
  });

  test('has a card to check, without any file, and each difference is settled in a tap', async () => {
    await onStage({ worker: true }, async (stage) => {
      const { page } = stage;
      await stage.waitOfflineReady();
      await openSampleDay(stage);
      await stage.killServer();
      await toPage(page, 'card');
      await tap(page, 'Sample card');
      const body = page.locator('main.body');
      for (const says of ['45A/2', '14C_WT02.wav', 'Emil', '45/2'])
        await expect.poll(() => body.textContent(), { message: says }).toContain(says);
      await page.getByRole('button', { name: 'Mark checked, 4 open' }).waitFor();
      await stage.screenshot('sample-card');
      await tap(page, 'Keep the log for all');
      await page.getByRole('button', { name: 'Mark card checked', exact: true }).waitFor();
    });
  });
});

test('a real day offers no sample card', async () => {
  await onStage({}, async ({ page }) => {
    await startDay(page);
    await toPage(page, 'card');
    await page.getByText('Choose files').waitFor();
    expect(await page.getByRole('button', { name: 'Sample card' }).count()).toBe(0);
  });
});
