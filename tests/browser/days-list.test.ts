import { expect, test } from 'vitest';
import { onStage } from './harness.ts';
import { startDay, takeOne } from './tapping.ts';

test('the list of days counts the takes of today when one comes back to it, without a reload', async () => {
  await onStage({}, async (stage) => {
    const { page } = stage;
    await startDay(page);
    for (let number = 1; number <= 3; number += 1) await takeOne(page);
    await page.evaluate(() => {
      location.hash = '#/';
    });
    const day = page.locator('.day-row').first();
    await day.waitFor();
    await expect.poll(() => day.textContent()).toContain('3 takes');
  });
});
