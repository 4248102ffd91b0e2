import { expect, test } from 'vitest';
import { onStage } from './harness.ts';
import { openSampleDay } from './places.ts';

test('a touched button is marked, and its sheet waits for the picture that shows the mark', () =>
  onStage({}, async (stage) => {
    await openSampleDay(stage);
    const { page } = stage;
    const rest = page.locator('.summary-rest');
    const ring = (): Promise<string> => rest.evaluate((one) => getComputedStyle(one).outlineStyle);
    expect(await ring()).toBe('none');
    const inNextPicture = rest.evaluate(
      (one) =>
        new Promise((done) => {
          one.addEventListener('click', () =>
            requestAnimationFrame(() =>
              done([getComputedStyle(one).outlineStyle, document.querySelector('dialog') !== null]),
            ),
          );
        }),
    );
    await rest.tap();
    expect(await inNextPicture).toEqual(['solid', false]);
    await page.locator('dialog').waitFor();
  }));

test('a sheet that takes the place of another lets nothing be seen between them', () =>
  onStage({}, async (stage) => {
    await openSampleDay(stage);
    const { page } = stage;
    // Both are loaded, as they are by the time that anybody taps where the worker is installed.
    await page.getByRole('button', { name: /Wiktoria/ }).tap();
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.locator('.summary-rest').tap();
    const title = page.locator('dialog h2');
    const before = await title.textContent();
    const row = page.locator('dialog button.row').first();
    await row.waitFor();
    const [gaps, after] = await row.evaluate(async (one: HTMLElement) => {
      let without = 0;
      const look = new MutationObserver(() => {
        if (!document.querySelector('dialog')) without += 1;
      });
      look.observe(document.body, { childList: true, subtree: true });
      one.click();
      const frames = [];
      for (let frame = 0; frame < 4; frame += 1)
        frames.push(
          await new Promise((done) =>
            requestAnimationFrame(() => done(document.querySelectorAll('dialog').length)),
          ),
        );
      look.disconnect();
      return [[without, ...frames], document.querySelector('dialog h2')?.textContent] as const;
    });
    expect(gaps).toEqual([0, 1, 1, 1, 1]);
    expect(after).not.toBe(before);
  }));
