import { expect, test } from 'vitest';
import { speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { onStage, type Stage } from './harness.ts';
import { openSaid } from './said-day.ts';
import { tab } from './tapping.ts';

/** Wrap of a day of two takes of which nobody entered the head. */
async function openBare(stage: Stage): Promise<void> {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, take('24', 0, 1), take('24', 0, 2));
  await openSaid(stage, phone);
  await tab(stage.page, 'Wrap');
  await stage.page.locator('.report-text').waitFor();
}

const asked = ({ page }: Stage) => page.locator('.head-lacks p');
const report = async ({ page }: Stage): Promise<string> =>
  ((await page.locator('.report-text').first().textContent()) ?? '').replaceAll(/\s+/g, ' ');

test('what the head lacks is asked in a line above the way to send, a late roll from which take on', () =>
  onStage({ viewport: { width: 360, height: 640 } }, async (stage) => {
    const { page } = stage;
    await openBare(stage);
    expect(await page.locator('#unsettled-head').textContent()).not.toBe('Nothing left to settle');
    expect(await asked(stage).textContent()).toBe('No production, mixer, roll and date yet');
    await page.locator('.head-lacks').getByRole('button', { name: 'Enter' }).tap();
    const sheet = page.getByRole('dialog', { name: 'Head of the report' });
    await sheet.getByLabel('Production').fill('Salt Road');
    await sheet.getByLabel('Date').fill('2026-10-07');
    await sheet.getByLabel('Sound roll from here on').fill('7A');
    await sheet.getByText('Roll 7A was in from').waitFor();
    await sheet.getByRole('button', { name: 'Save' }).tap();
    await expect.poll(() => asked(stage).textContent()).toBe('No mixer yet');
    const said = await report(stage);
    expect(said).toContain('Roll 7A');
    // From the first take on: no take is left without it.
    expect(said).not.toContain('no roll');
    await page.locator('.head-lacks').getByRole('button', { name: 'Enter' }).tap();
    expect(await sheet.getByLabel('Production').count()).toBe(0);
    await sheet.getByLabel('Sound mixer').fill('N. Aske');
    await sheet.getByRole('button', { name: 'Save' }).tap();
    await expect.poll(() => asked(stage).count()).toBe(0);
    expect(await report(stage)).not.toContain('Not entered');
  }));

test('a report with a bare head goes out by one tap, and is not asked about again', () =>
  onStage({}, async (stage) => {
    const { page } = stage;
    await openBare(stage);
    await asked(stage).waitFor();
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Download the report' }).tap();
    await download;
    await expect.poll(() => asked(stage).count()).toBe(0);
    // What lacks is still said where it can be settled.
    await page.getByRole('button', { name: /^Not entered: production, mixer, roll, date/ }).waitFor();
  }));
