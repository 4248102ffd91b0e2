import { expect, test } from 'vitest';
import { openStage } from './harness.ts';
import { openSampleDay } from './places.ts';

test('a screen waits for the paint that marks its tab, and comes at once where nobody tapped one', async () => {
  const stage = await openStage();
  await openSampleDay(stage);
  const shown = await stage.page.evaluate(async () => {
    [...document.querySelectorAll<HTMLElement>('.tabs a')].find((tab) => tab.textContent === 'Cast')!.click();
    await new Promise((done) => requestAnimationFrame(done));
    return [
      document.querySelector('.tabs [aria-current]')?.textContent,
      document.querySelector('main')?.dataset.tab,
    ];
  });
  expect(shown).toEqual(['Cast', 'now']);
  await stage.page.locator('main[data-tab="cast"]').waitFor();
  // The app listens already, and draws what changed before the next listener is called.
  const back = await stage.page.evaluate(async () => {
    const atAddress = new Promise<string | undefined>((done) => {
      addEventListener('hashchange', () => done(document.querySelector('main')?.dataset.tab), { once: true });
    });
    history.back();
    return atAddress;
  });
  expect(back).toBe('now');
  await stage.close();
});

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
