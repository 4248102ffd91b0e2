import { describe, expect, test } from 'vitest';
import { CAST, morningOnTheCart } from './cart-and-bag.ts';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';
import { openSaid } from './said-day.ts';

const SMALL = { clock: '2026-10-07T13:00:00Z', viewport: { width: 360, height: 640 } };
describe('the unit goes from the cart to a car and back', () => {
  test('in at most twelve taps out and six back, with no false clash, and each way is one Undo', async () => {
    await onStage(SMALL, async (stage) => {
      const { page, at, tab } = hands(stage);
      let taps = 0;
      const tap = async (name: string | RegExp, role: 'button' | 'link' = 'button'): Promise<void> => {
        await page().getByRole(role, { name }).first().tap();
        taps += 1;
      };
      const summary = () => page().locator('.summary').textContent();
      const head = () => page().locator('.head-day').textContent();
      const rows = async () =>
        (await page().locator('main .rows-two .row strong').allTextContents())
          .filter((name) => CAST.includes(name))
          .sort();
      await openSaid(stage, morningOnTheCart());
      expect(await rows()).toEqual(CAST.toSorted());

      await tap(/^About this day/);
      await tap('Recorders: Cart and Bag');
      await stage.screenshot('recorders-of-two');
      await tap('Move the unit', 'link');
      await page()
        .getByText(/everyone recorded/)
        .waitFor();
      await page().getByText('Proven: no better plan exists.').waitFor();
      await stage.screenshot('move-out');
      await tap(/^Apply \d+ moves$/);
      await expect.poll(head).toContain('on Bag');
      await expect.poll(rows).toEqual(CAST.toSorted());
      expect(await summary()).toContain('everyone recorded');
      expect(await summary()).not.toContain('clash');
      expect(await page().getByText('new since').count()).toBe(0);
      expect(taps).toBeLessThanOrEqual(12);
      await stage.screenshot('on-the-bag');

      await tap(/^Undo$/);
      await expect.poll(head).toContain('on Cart');
      await tab('Line');
      await page().getByRole('button', { name: /^Redo/ }).first().tap();
      await expect.poll(head).toContain('on Bag');
      await tab('Now');
      await at('14:10:00');
      await page()
        .getByRole('button', { name: /^Roll$/ })
        .tap();
      await at('14:10:30');
      await page().getByRole('button', { name: /^Cut$/ }).tap();

      taps = 0;
      await tap(/^About this day/);
      await tap('Recorders: Cart and Bag');
      await tap('Move the unit', 'link');
      await page().getByText('Cart rolling from now on.').waitFor();
      await page()
        .getByText(/^unplug far box 1 from Bag net \d$/)
        .waitFor();
      await stage.screenshot('move-back');
      await tap(/^Apply/);
      await expect.poll(head).toContain('on Cart');
      await expect.poll(rows).toEqual(CAST.toSorted());
      expect(await summary()).toContain('everyone recorded');
      expect(await summary()).not.toContain('clash');
      expect(taps).toBeLessThanOrEqual(6);
      await tap(/^Undo$/);
      await expect.poll(head).toContain('on Bag');
    });
  });
});
