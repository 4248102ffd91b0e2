import { expect, test } from 'vitest';
import { openStage } from './harness.ts';
import { openSampleDay } from './places.ts';

test('a tapped tab is marked before its screen is there, and stays marked when it is', async () => {
  const stage = await openStage();
  await openSampleDay(stage);
  const { page } = stage;
  const firstChange = await page.evaluate(
    () =>
      new Promise<(string | null | undefined)[]>((done) => {
        new MutationObserver(() => {
          const marked = document.querySelector('.tabs [aria-current]')?.textContent;
          done([marked, document.querySelector('main')?.dataset.tab]);
        }).observe(document.querySelector('.tabs')!, { subtree: true, attributes: true, childList: true });
        [...document.querySelectorAll<HTMLElement>('.tabs a')]
          .find((tab) => tab.textContent === 'Cast')!
          .click();
      }),
  );
  expect(firstChange).toEqual(['Cast', 'now']);
  await page.locator('main[data-tab="cast"]').waitFor();
  expect(await page.locator('.tabs [aria-current]').allTextContents()).toEqual(['Cast']);
  await stage.close();
});
