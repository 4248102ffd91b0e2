import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { needPoppler, pageTexts } from '../oracle/poppler.ts';
import { onStage, type Stage } from './harness.ts';

const button = ({ page }: Stage, name: string | RegExp) => page.getByRole('button', { name }).first();

async function openSample(stage: Stage, page: 'radio' | 'upkeep'): Promise<void> {
  await button(stage, 'Sample day').tap();
  await stage.page.locator('.rows .row').first().waitFor();
  await stage.page.getByRole('link', { name: 'Rig', exact: true }).tap();
  await button(stage, page === 'radio' ? /^Radio/ : /^Upkeep/)
    .or(stage.page.getByRole('link', { name: page === 'radio' ? /^Radio/ : /^Upkeep/ }))
    .first()
    .tap();
}

/** Types megahertz into the field of a pack and leaves it. */
async function tune(stage: Stage, pack: string, mhz: string): Promise<void> {
  const field = stage.page.locator('.radio-packs li').filter({ hasText: pack }).locator('input');
  await field.fill(mhz);
  await field.press('Enter');
}

describe('prep', () => {
  beforeAll(needPoppler);

  test('names the hit that three carriers make, and a clean frequency ends it, with no signal', async () => {
    await onStage({ clock: '2026-11-20T03:10:00Z', worker: true }, async (stage) => {
      const { page } = stage;
      await stage.loseSignal();
      await openSample(stage, 'radio');
      // 2 × 519.5 − 521.0 = 518.0 and 2 × 519.95 − 521.0 = 518.9: what the night's own two hits are.
      // Rig says how many hits there are, too.
      const body = page.locator('main.body[data-tab="radio"]');
      await expect.poll(() => body.textContent()).toContain('2 hits');
      for (const name of ['Video link B', '518.000', '518.900'])
        expect((await body.textContent()) ?? '').toContain(name);
      // 2 × 500.4 − 500.0 = 500.8: the third-order product of A1 and A2 falls on A3.
      await tune(stage, 'A1', '500.0');
      await tune(stage, 'A2', '500,4');
      await tune(stage, 'A3', '500.8');
      await expect.poll(() => body.textContent()).toMatch(/[2-9] hits|1 hit/);
      const hits = (await body.textContent()) ?? '';
      for (const name of ['A1', 'A2', 'A3', '500.800']) expect(hits).toContain(name);
      await tune(stage, 'A3', '501.15');
      await expect.poll(() => body.textContent()).not.toMatch(/[1-9]\d* hits?\b/);
      // What nobody transmits on is refused in words, and the field keeps it.
      await tune(stage, 'A4', '0');
      await page.getByRole('alert').filter({ hasText: /\w/ }).first().waitFor();
      await stage.waitSaved();
      await stage.reload();
      await expect
        .poll(() => page.locator('.radio-packs li').filter({ hasText: 'A2' }).locator('input').inputValue())
        .toMatch(/^500\.4/);
    });
  });

  test('draws who falls short until fresh batteries are in, and prints the wiring', async () => {
    await onStage({ clock: '2026-11-20T03:10:00Z' }, async (stage) => {
      const { page } = stage;
      await openSample(stage, 'upkeep');
      const body = page.locator('main.body');
      await expect.poll(() => body.textContent()).toContain('3 things due');
      await button(stage, /^Batteries/).tap();
      const row = page.locator('.device-row').filter({ hasText: /^A1/ });
      const missing = row.locator('.time-bar-missing');
      // The sample's A1 has been on too long: its bar ends before wrap, and words say so as well.
      await row.waitFor();
      expect(await row.textContent()).toContain('flat before wrap');
      expect(await missing.count()).toBe(1);
      await button(stage, 'Fresh batteries in A1').tap();
      await expect.poll(() => body.textContent()).toContain('2 things due');
      await expect.poll(() => row.textContent()).not.toContain('flat before wrap');
      expect(await missing.count()).toBe(0);
      // How long a battery lasts is not guessed: without it there are words and no bar.
      const other = page.locator('.device-row').filter({ hasText: /^A2/ });
      await other.locator('.device-about').tap();
      await page.getByLabel('Battery life, hours').fill('');
      await page.getByRole('dialog').getByRole('button', { name: 'Save', exact: true }).tap();
      await expect.poll(() => other.textContent()).toContain('battery life not set');
      expect(await other.locator('.time-bar').count()).toBe(0);
      expect(await page.locator('main.body').textContent()).not.toMatch(/NaN|Infinity|undefined/);

      await button(stage, 'Wiring sheet').tap();
      await page.getByRole('heading', { name: 'Wiring sheet' }).waitFor();
      const download = page.waitForEvent('download');
      await button(stage, 'As pages (PDF)').tap();
      const sheet = pageTexts(readFileSync(await (await download).path())).join('\n');
      for (const words of ['Wiring sheet', 'Nine Below Arnholt', 'cart 1', 'line 1', 'slot 4', 'selector']) {
        expect(sheet, words).toContain(words);
      }
    });
  });
});
