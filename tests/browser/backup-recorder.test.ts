import { describe, expect, test } from 'vitest';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';
import { startDay } from './tapping.ts';

describe('a backup recorder that rolls along', () => {
  test('is added from the first take on, and a take that it missed is corrected', async () => {
    await onStage({ clock: '2026-10-07T07:00:00Z', viewport: { width: 360, height: 640 } }, async (stage) => {
      const { page, tap, inSheet, fill, take, tab, closed } = hands(stage);
      await startDay(page());
      await take('07:10:00', '07:10:20');
      await take('07:12:00', '07:12:20');
      await take('07:14:00', '07:14:20');

      await tap(/^About this day/);
      await fill('Recorder', 'Cart');
      await inSheet(/^Save$/);
      await closed();
      await tap(/^About this day/);
      await fill('Unit', 'second unit');
      await inSheet('Add a recorder');
      await inSheet('before 1/1');
      await fill('Name of another recorder', 'Cart');
      await inSheet('Add as a backup');
      await page()
        .getByText(/in the rig already/)
        .first()
        .waitFor();
      await fill('Name of another recorder', 'Backup');
      await inSheet('Add as a backup');
      await page().getByRole('dialog').getByText('Rolling', { exact: true }).waitFor();
      await inSheet(/^Backup.*the same tracks as Cart/);
      await fill('Sound roll from here on', 'B1');
      // Of this recorder no roll was named so far.
      await page().getByRole('dialog').getByText('Roll B1 was in from').waitFor();
      await inSheet(/^Save$/);
      await page()
        .getByRole('dialog')
        .getByText(/roll B1/)
        .first()
        .waitFor();
      await stage.screenshot('recorders');
      await inSheet('Close');
      // What was typed before is still there.
      await inSheet(/^Save$/);
      await closed();

      expect(await page().locator('.head-day').textContent()).toContain('on Cart and Backup');
      await tab('Line');
      await page().locator('.line-row').filter({ hasText: '1/2' }).first().tap();
      await page().getByText('Recorded on').waitFor();
      await stage.screenshot('take-on-recorders');
      await inSheet(/^Backup$/);
      await inSheet('Close');
      await closed();
      await stage.waitSaved();
      await stage.reload();
      await tab('Wrap');
      await page().getByText('on Cart only').first().waitFor();
      const text = (await page().locator('main').textContent())!.replaceAll(/\s+/g, ' ');
      expect(text).toContain('Cart, all 3 takes');
      expect(text).toContain('Backup, roll B1, 2 of 3 takes, not 1/2');
    });
  });
});
