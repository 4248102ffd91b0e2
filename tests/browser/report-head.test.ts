import { expect, test } from 'vitest';
import { onStage } from './harness.ts';
import { tab, tap } from './tapping.ts';

test('contacts and the reference tone are entered with the day and stand at the head of the report', () =>
  onStage({ clock: '2026-11-20T03:10:00Z', viewport: { width: 360, height: 640 } }, async (stage) => {
    const { page } = stage;
    await tap(page, 'Sample day');
    await page.locator('.rows .row').first().waitFor();
    await tap(page, /^About this day/);
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('button', { name: /^Contacts and reference tone/ }).tap();
    await dialog.getByLabel('Sound mixer: phone or email').fill('mixer@example.org');
    await dialog.getByLabel('Reference tone', { exact: true }).fill('-20 dBFS, 1 kHz');
    await dialog.getByLabel('Roll with the tone').fill('14C');
    await dialog.getByRole('button', { name: 'Save' }).tap();
    await tab(page, 'Wrap');
    const report = async (): Promise<string> =>
      ((await page.locator('.report-text').first().textContent()) ?? '').replaceAll(/\s+/g, ' ');
    await expect.poll(report).toContain('Reference tone -20 dBFS, 1 kHz, on roll 14C');
    expect(await report()).toMatch(/Mixer [^,]+, mixer@example\.org/);
    expect(await report()).toContain('mix post fader');
    expect(await report()).toContain('jammed from');
  }));
