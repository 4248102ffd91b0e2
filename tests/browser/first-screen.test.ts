import { describe, expect, test } from 'vitest';
import { onStage } from './harness.ts';
import { openSampleDay } from './places.ts';
import { startDay, tab, takeOne, tap } from './tapping.ts';

describe('an empty phone', () => {
  test('opens on a picture of what the app does, with the two ways to begin under the thumb, at 360 x 640', async () => {
    await onStage({ viewport: { width: 360, height: 640 } }, async (stage) => {
      const { page } = stage;
      const picture = page.getByRole('img', { name: /^Who was on which track in 44C\/1/ });
      await picture.waitFor();
      expect(await picture.getAttribute('aria-label')).toContain('track 7: Old Tibor, then Rozália');
      const foot = (await page.locator('.days-foot').boundingBox())!;
      const drawn = (await picture.boundingBox())!;
      const said = (await page.getByText(/^Log a change in two taps/).boundingBox())!;
      expect(drawn.width).toBeGreaterThan(300);
      expect(drawn.y + drawn.height).toBeLessThanOrEqual(said.y);
      expect(said.y + said.height).toBeLessThanOrEqual(foot.y);
      for (const name of ['Sample day', 'New day']) {
        const button = (await page.getByRole('button', { name, exact: true }).boundingBox())!;
        expect(button.y, `${name} in the lower 40 %`).toBeGreaterThanOrEqual(640 * 0.6);
        expect(button.height).toBeGreaterThanOrEqual(56);
        expect(button.width).toBeGreaterThan(300);
      }
      for (const link of await page.locator('.days-links > *').all()) {
        const { width, height } = (await link.boundingBox())!;
        expect([width >= 48, height >= 48]).toEqual([true, true]);
      }
      await stage.screenshot('first-screen');
    });
  });

  test('gives way to the list with the first day, and comes back with the last one erased', async () => {
    await onStage({}, async (stage) => {
      const { page } = stage;
      await openSampleDay(stage);
      await page.goto(`${stage.origin}/#/`);
      await page.locator('.day-row').waitFor();
      expect(await page.getByRole('img').count()).toBe(0);
      await tap(page, /^More about/);
      await tap(page, 'Erase this day');
      await tap(page, 'Erase from this phone');
      await page.getByRole('img', { name: /^Who was on which track/ }).waitFor();
    });
  });
});

test('look, hand and where the data lives are in Settings, from the list and from a day, and Back leads back', async () => {
  await onStage({}, async (stage) => {
    const { page } = stage;
    const settings = () => page.getByRole('heading', { name: 'Settings' });
    await page.getByRole('link', { name: 'Settings' }).tap();
    await settings().waitFor();
    for (const name of ['Sunlight', 'Left hand', 'Licences'])
      expect(await page.getByRole('button', { name }).count(), name).toBe(1);
    await page.getByText(/In this browser, on this phone, and nowhere else until you send it/).waitFor();
    await tap(page, 'Sunlight');
    expect(await page.locator('html').getAttribute('data-look')).toBe('sunlight');
    await tap(page, 'Back');
    await openSampleDay(stage);
    await tap(page, /^About this day/);
    await page.getByRole('dialog').getByRole('link', { name: 'Settings' }).tap();
    await settings().waitFor();
    await tap(page, 'Back');
    await page.locator('.dock').waitFor();
  });
});

test('plan and picture of a new day say what they begin with, and offer nothing to apply or enlarge', async () => {
  await onStage({}, async ({ page }) => {
    await startDay(page);
    const day = /day\/([^/]+)/.exec(page.url())?.[1];
    await page.goto(`${new URL(page.url()).origin}/#/day/${day}/plan`);
    await page.getByText(/^Nobody in the cast yet\./).waitFor();
    expect(await page.getByText('everyone recorded').count()).toBe(0);
    expect(await page.getByRole('button', { name: 'Apply', exact: true }).isDisabled()).toBe(true);
    await page.goto(`${new URL(page.url()).origin}/#/day/${day}/picture`);
    await page.getByText('The picture begins with the first take.').waitFor();
    expect(await page.getByRole('button', { name: 'Larger' }).count()).toBe(0);
    await tab(page, 'Now');
    await takeOne(page);
    await page.goto(`${new URL(page.url()).origin}/#/day/${day}/picture`);
    await page.getByRole('button', { name: 'Larger' }).waitFor();
  });
});
