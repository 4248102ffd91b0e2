import { expect, test } from 'vitest';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { speaker } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { onStage } from './harness.ts';
import { paste, tap } from './tapping.ts';

/** A day on which a second phone tuned a channel and named a pack differently, knowing nothing of the first. */
function differingDay(): string {
  const [a, b] = [speaker('phonea'), speaker('phoneb')];
  a.say(
    { kind: 'day-described', fields: { production: 'Salt Road', label: 'Day 3 of 40', date: '2026-10-07' } },
    ...SMALL_RIG,
    ...SMALL_CAST,
  );
  b.say({ kind: 'channels-tuned', tunings: [{ channel: 'near1', transmitter: 'A3' }] });
  b.say({ kind: 'part-described', part: 'A2', fields: { name: 'A9' } });
  return writeDayFile('day-1', 'Salt Road', [...a.facts, ...b.facts]);
}

test('the next day asks what is in doubt, is one after a double tap, and undo stops at its beginning', async () => {
  await onStage({}, async (stage) => {
    const { page } = stage;
    await tap(page, /^Import day file/);
    await paste(page.getByLabel('Or paste the text'), differingDay());
    await tap(page, 'Import what was pasted');
    await page.getByRole('link', { name: 'Wrap', exact: true }).tap();
    await tap(page, 'Start the next day from this one');
    const question = page.getByRole('group', { name: '2 things are in doubt' });
    await question.waitFor();
    await question.getByRole('button', { name: 'Not yet' }).tap();
    await tap(page, 'Start the next day from this one');
    await question.getByRole('button', { name: 'Start it anyway' }).evaluate((button: HTMLButtonElement) => {
      button.click();
      button.click();
    });
    await expect.poll(() => page.locator('.head-day').textContent()).toContain('Day 4 of 40');
    await stage.waitSaved();
    await page.getByRole('link', { name: 'Line', exact: true }).tap();
    const undo = page.getByRole('button', { name: 'Undo' });
    await undo.waitFor();
    expect(await undo.isDisabled()).toBe(true);
    await page.evaluate(() => {
      location.hash = '#/';
    });
    await page.getByRole('button', { name: 'New day' }).waitFor();
    const titles = await page.locator('.day-row').allTextContents();
    expect(titles).toHaveLength(2);
    expect(titles[0]).toContain('Day 4 of 40');
    expect(titles[1]).toContain('Day 3 of 40');
  });
});

test('a new day of another production says that nothing goes on, and its head has no crew of the last one', async () => {
  await onStage({}, async (stage) => {
    const { page } = stage;
    await tap(page, 'New day');
    await page.getByLabel('Production').fill('Salt Road');
    await page.getByLabel('Day', { exact: true }).fill('Day 7');
    await tap(page, 'Start the day');
    await tap(page, /^About this day/);
    await page.getByLabel('Sound mixer').fill('M. Vale');
    await tap(page, /^Save$/);
    await stage.waitSaved();
    await page.evaluate(() => {
      location.hash = '#/';
    });
    await tap(page, 'New day');
    await page.getByText(/copied from Salt Road · Day 7/).waitFor();
    await page.getByLabel('Production').fill('Harbour Lights');
    await page.getByText('Another production: no crew').waitFor();
    expect(await page.getByLabel('Day', { exact: true }).inputValue()).toBe('Day 1');
    await tap(page, 'Start the day');
    await tap(page, /^About this day/);
    expect(await page.getByLabel('Sound mixer').inputValue()).toBe('');
  });
});
