import { describe, expect, test } from 'vitest';
import { bothRolling } from '../day/two-recorders.ts';
import { bothRollAlong, CAST } from './cart-and-bag.ts';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';
import { openSaid } from './said-day.ts';

const SMALL = { clock: '2026-10-07T07:00:00Z', viewport: { width: 360, height: 640 } };

describe('two recorders that roll', () => {
  test('Now shows the main one, the other by one tap, and marks whom one of them does not get', async () => {
    await onStage(SMALL, async (stage) => {
      const { page, tap, inSheet, closed, tab } = hands(stage);
      await openSaid(stage, bothRolling());
      const rows = async () =>
        (await page().locator('main .rows-two .row').allInnerTexts()).map((text) =>
          text.replaceAll('\n', ' '),
        );
      const summary = () => page().locator('.summary').textContent();
      await expect
        .poll(rows)
        .toEqual([
          '– Boom on Bag 2 not on Cart',
          '1 Mix post fader',
          '3 Ines A1 › near 1 › AES 1',
          '4 Dora A2 › near 2 › AES 2 not on Bag',
          expect.stringContaining('in 1'),
        ]);
      expect(await summary()).toContain('everyone recorded · 1 not on Bag');
      await stage.screenshot('two-rolling-cart');
      await tap('Cart show Bag');
      await expect
        .poll(rows)
        .toEqual([
          '– Dora on Cart 4 not on Bag',
          '1 Mix post fader',
          '2 Boom hardline › in 1 not on Cart',
          '3 Ines A1 › near 1 › AES 1',
          expect.stringContaining('No input free'),
        ]);
      await stage.screenshot('two-rolling-bag');

      // The sheets say whose track it is.
      const sheet = page().getByRole('dialog');
      await page()
        .getByRole('button', { name: /^3 Ines/ })
        .tap();
      await sheet.getByText(/^Bag · A1/).waitFor();
      await inSheet('Other track');
      expect(
        await sheet.getByRole('group', { name: 'Send to track' }).getByRole('button').allTextContents(),
      ).toEqual(['2', '3']);
      await inSheet('Close');
      await closed();
      await page().getByRole('button', { name: /Dora/ }).tap();
      await sheet.getByText(/alone on Cart 4 · not on Bag/).waitFor();
      await inSheet('Close');
      await closed();
      await tap(/^No input free/);
      await sheet.getByText('Inputs of Bag').waitFor();
      await inSheet('Close');
      await closed();
      await tab('Cast');
      await page().getByText('alone on Cart 3 and Bag 3').waitFor();
    });
  });

  test('the next setup is planned for the main one first and says what the other must be given', async () => {
    await onStage(SMALL, async (stage) => {
      const { page, tap, tab } = hands(stage);
      const phone = bothRollAlong();
      phone.say({ kind: 'voices-needed', voices: CAST.map((voice) => ({ voice, need: 'needed' })) });
      await openSaid(stage, phone);
      expect(await page().locator('.summary').textContent()).toContain('1 not on Bag');
      await tab('Cast');
      await page().getByRole('link', { name: 'Next setup' }).tap();
      await page().getByText('On Cart, the main recorder, then on Bag.').waitFor();
      const bag = page().getByRole('region', { name: 'Bag' });
      await bag.getByText('Proven: no better plan exists.').waitFor();
      expect(await bag.getByRole('listitem').allInnerTexts()).toEqual([
        expect.stringContaining('plug far box 8 into Bag net 8'),
      ]);
      await stage.screenshot('plan-with-backup');
      await tap('Pin Ines');
      const sheet = page().getByRole('dialog');
      await sheet.getByRole('button', { name: 'Bag track 2', exact: true }).tap();
      await sheet.getByRole('button', { name: 'alone on Cart, no gang' }).tap();
      await sheet.getByRole('button', { name: 'far box 1 on Bag', exact: true }).waitFor();
      await stage.screenshot('pins-of-two');
      await sheet.getByRole('button', { name: 'Close' }).tap();
      await page().getByText('keeps alone on Cart and Bag track 2').waitFor();
      await tap('Apply 1 move');
      await page().locator('.dock').waitFor();
      expect(await page().locator('.summary').textContent()).toContain('everyone recorded');
      expect(await page().locator('.summary').textContent()).not.toContain('not on Bag');
    });
  });
});
