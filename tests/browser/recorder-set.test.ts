import { describe, expect, test } from 'vitest';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';
import { startDay } from './tapping.ts';

describe('the recorder set otherwise in the middle of the day', () => {
  test('from a gap on the line, and a roll that is named late from the first take on', async () => {
    await onStage({ clock: '2026-10-07T07:00:00Z', viewport: { width: 360, height: 640 } }, async (stage) => {
      const { page, tap, inSheet, fill, at, take, tab, closed } = hands(stage);
      const head = () => page().locator('.head-day').textContent();
      const sheet = page().getByRole('dialog');
      await startDay(page());
      await take('07:10:00', '07:10:20');
      await take('07:12:00', '07:12:20');
      await take('07:14:00', '07:14:20');

      await tap(/^About this day/);
      // Nothing asks from when until something is set that has a place on the line.
      expect(await sheet.getByText(/starting when/).count()).toBe(0);
      await fill('Sound roll from here on', '7A');
      await sheet.getByText('Roll 7A was in from').waitFor();
      await sheet.getByText('23.976', { exact: true }).tap();
      await sheet.getByText(/New settings, starting when/).waitFor();
      await stage.screenshot('recorder-set');
      await inSheet('before 1/3');
      await inSheet(/^Save$/);
      await closed();
      expect(await head()).toContain('roll 7A · 23.976');

      await at('07:16:00');
      await tap(/^Roll$/);
      await at('07:16:20');
      await tap(/^Cut$/);
      await tab('Wrap');
      const report = page().getByText(/The timecode rate changes during the day/);
      await report.first().waitFor();
      const text = (await page().locator('main').textContent())!.replaceAll(/\s+/g, ' ');
      expect(text).toContain('25 fps to 1/2; 23.976 fps from 1/3');
      expect(text).not.toContain('no roll');

      // Said on the line, it is still so after a reload.
      await stage.waitSaved();
      await stage.reload();
      expect(await head()).toContain('roll 7A · 23.976');
    });
  });
});
