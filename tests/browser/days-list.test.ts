import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { onStage } from './harness.ts';
import { openSampleDay } from './places.ts';
import { startDay, takeOne, tap } from './tapping.ts';

/** Goes to the list of days and returns what its first rows say, before anything is read anew. */
const firstSeen = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      new Promise<string>((done) => {
        const seen = new MutationObserver(() => {
          const rows = document.querySelectorAll('.day-row');
          if (rows.length === 0) return;
          seen.disconnect();
          done([...rows].map((row) => row.textContent).join('\n'));
        });
        seen.observe(document.body, { subtree: true, childList: true });
        location.hash = '#/';
      }),
  );

test('the list of days counts the takes of today the moment one comes back to it', async () => {
  await onStage({}, async (stage) => {
    const { page } = stage;
    await startDay(page);
    for (let number = 1; number <= 3; number += 1) await takeOne(page);
    expect(await firstSeen(page)).toContain('3 takes');
  });
});

test('the list of days is right the moment a day was imported, and the moment it is erased', async () => {
  await onStage({}, async (stage) => {
    const { page } = stage;
    await openSampleDay(stage);
    await takeOne(page);
    expect(await firstSeen(page)).toContain('76 takes');
    await tap(page, /^More about/);
    await tap(page, 'Erase this day');
    await tap(page, 'Erase from this phone');
    await page.locator('.day-row').waitFor({ state: 'detached' });
  });
});
