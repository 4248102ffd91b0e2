import { describe, expect, test } from 'vitest';
import { bothRollAlong } from './cart-and-bag.ts';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';
import { openSaid } from './said-day.ts';
import { wholeRows } from './whole-rows.ts';

describe('two recorders that roll on a small screen', () => {
  test('seven whole rows in sight, a pack moved and a mute by two taps, and one tap to the other recorder', async () => {
    const viewport = { width: 360, height: 640 };
    await onStage({ clock: '2026-10-07T13:00:00Z', viewport }, async (stage) => {
      const { page, tap, inSheet, closed, tab } = hands(stage);
      const sheet = page().getByRole('dialog');
      const said = (words: RegExp) =>
        page().getByRole('status').filter({ hasText: words }).waitFor({ state: 'attached' });
      await openSaid(stage, bothRollAlong());
      await page().locator('.summary-recorder').waitFor();
      await stage.screenshot('two-in-reach');
      await expect.poll(() => wholeRows(page())).toBeGreaterThanOrEqual(7);
      const head = (await page().locator('.head').boundingBox())!;
      expect(head.height).toBeLessThanOrEqual(72);
      await tap(/^Cart show Bag$/);
      await page()
        .getByRole('button', { name: /^Bag show Cart$/ })
        .waitFor();
      await stage.screenshot('two-in-reach-bag');
      await expect.poll(() => wholeRows(page())).toBeGreaterThanOrEqual(7);
      const switched = (await page().locator('.summary-recorder').boundingBox())!;
      expect(Math.min(switched.height, switched.width)).toBeGreaterThanOrEqual(44);

      // With Undo beside it the summary is still no higher than seven rows allow.
      await tap(/^circle 3/);
      await page().locator('.summary-undo').waitFor();
      for (const show of [/^Bag show Cart$/, /^Cart show Bag$/]) {
        await stage.screenshot(`two-in-reach-undo-${String(show).slice(2, 5)}`);
        expect((await page().locator('.summary').boundingBox())!.height).toBeLessThanOrEqual(72);
        await tap(show);
      }

      await tap(/Dora/);
      await inSheet(/^Mute/);
      await said(/muted/);
      await closed();
      await tap(/Mira/);
      await inSheet(/^Ruth/);
      await said(/on Ruth/);
      await closed();
      // The picture of the day is one of each recorder; the take lists the tracks of both.
      await tab('Line');
      await page().locator('.line-row').filter({ hasText: '24/3' }).first().tap();
      await expect
        .poll(() => sheet.getByRole('heading', { level: 3 }).allTextContents())
        .toEqual(['Cart', 'Bag']);
      await stage.screenshot('take-of-two');
      await inSheet('Close');
      await closed();
      await tab('Wrap');
      await tap(/^Picture/);
      const bands = () => page().locator('.picture-take').count();
      await expect.poll(bands).toBe(3);
      await stage.screenshot('picture-cart');
      await tap(/^Bag$/);
      await expect.poll(bands).toBe(1);
      await stage.screenshot('picture-bag');
    });
  });

  test('seven whole rows with somebody not recorded, a clash and Undo beside the switch, and the head unbroken', async () => {
    const viewport = { width: 360, height: 640 };
    await onStage({ clock: '2026-10-07T13:00:00Z', viewport }, async (stage) => {
      const { page, tap } = hands(stage);
      const phone = bothRollAlong();
      const [line1] = phone.day().rig.inputs.filter(({ name }) => name === 'line 1');
      phone.say(
        { kind: 'inputs-sent', routes: [{ input: line1!.id, tracks: ['tr3'] }] },
        { kind: 'voice-described', voice: 'zoe', fields: { part: 'Zoe' } },
        { kind: 'voices-needed', voices: [{ voice: 'zoe', need: 'needed' }] },
      );
      await openSaid(stage, phone);
      await tap(/^circle 3/);
      await stage.waitSaved();
      await stage.reload();
      await page().locator('.summary-recorder').waitFor();
      await page().locator('.summary-undo').waitFor();
      expect(await page().locator('.summary .warn').allTextContents()).toEqual([
        'Zoe not recorded',
        '1 clash',
      ]);
      await stage.screenshot('two-in-trouble');
      await expect.poll(() => wholeRows(page())).toBeGreaterThanOrEqual(7);
      // Broken between its parts only.
      const heights = await page()
        .locator('.head-facts > span')
        .evaluateAll((parts) => parts.map((part) => part.getBoundingClientRect().height));
      expect(heights).toHaveLength(3);
      expect(Math.max(...heights)).toBeLessThan(20);
      await tap('1 clash');
      await page().getByRole('dialog').getByText('Ines').first().waitFor();
    });
  });
});
