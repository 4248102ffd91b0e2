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

test('while a take is open, every tab says so, and Now has the dock', async () => {
  const stage = await openStage();
  await openSampleDay(stage);
  const { page } = stage;
  await page.getByRole('button', { name: 'Roll', exact: true }).click();
  await page.locator('.dock-rolling').waitFor();
  const said = page.getByRole('link', { name: 'Now, a take is rolling' });
  await expect.poll(() => said.count()).toBe(0);
  await page.getByRole('link', { name: 'Cast', exact: true }).click();
  await said.click();
  await page.getByRole('button', { name: 'Cut', exact: true }).click();
  await page.getByRole('link', { name: 'Cast', exact: true }).click();
  await page.locator('main[data-tab="cast"]').waitFor();
  expect(await said.count()).toBe(0);
  await stage.close();
});

test('a section opened near the foot brings its rows into sight', async () => {
  const stage = await openStage();
  await openSampleDay(stage);
  const { page } = stage;
  await page.setViewportSize({ width: 360, height: 640 });
  await page.getByRole('link', { name: 'Rig', exact: true }).click();
  const heading = page.locator('.kit-section-head').last();
  await heading.waitFor();
  // Just above the foot, as a thumb finds it.
  await heading.evaluate((one) => one.scrollIntoView({ block: 'end' }));
  await heading.evaluate((one) => one instanceof HTMLElement && one.click());
  const seen = (): Promise<boolean> =>
    page.evaluate(() => {
      const section = [...document.querySelectorAll('.kit-section')].at(-1)!.getBoundingClientRect();
      const ground = document.querySelector('main')!.getBoundingClientRect();
      return section.height > 80 && (section.bottom <= ground.bottom + 1 || section.top <= ground.top + 1);
    });
  await expect.poll(seen).toBe(true);
  await stage.close();
});
