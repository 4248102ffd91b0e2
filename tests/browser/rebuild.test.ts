import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { noteFault } from './faults-table.ts';
import { onStage, type Stage } from './harness.ts';
import { withoutCopies } from './stored-copies.ts';
import { foldStored, openDayId, type Stored, spoilStored, storedFacts } from './stored-facts.ts';
import { startDay, tab, takeOne, takesOnTheLine, tap } from './tapping.ts';

const later = (stage: Stage): Promise<void> => stage.page.goto(`${stage.origin}/#/`).then(() => undefined);

/** The day file as the first screen gives it: one tap to its place, one to send it. */
async function dayFile(page: Page): Promise<string> {
  await tab(page, 'Now');
  await tap(page, /^About this day/);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('dialog').getByRole('button', { name: 'Download the day file' }).tap(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.txt$/);
  await page
    .getByRole('dialog')
    .getByText(/^backed up/)
    .first()
    .waitFor();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
  return readFileSync(await download.path(), 'utf8');
}

async function choose(page: Page, files: Record<string, string>): Promise<void> {
  await tap(page, /^Import day file/);
  await page.locator('input[type="file"]').setInputFiles(
    Object.entries(files).map(([name, text]) => ({
      name,
      mimeType: 'text/plain',
      buffer: Buffer.from(text),
    })),
  );
}

test('a lost database is rebuilt from any set of copies, damaged ones too, and it is said what was imported', async () => {
  await onStage({ ownBrowser: true }, async (stage) => {
    const { page, context, origin } = stage;
    await startDay(page);
    expect(await page.locator('.head').textContent()).toContain('saved, not backed up');
    await takeOne(page);
    await stage.waitSaved();
    const morning = await dayFile(page);
    expect(await page.locator('.head').textContent()).toContain('saved, backed up');
    await takeOne(page);
    await takeOne(page);
    await stage.waitSaved();
    expect(await page.locator('.head').textContent()).toContain('saved, backup out of date');
    const evening = await dayFile(page);
    const day = openDayId(page);
    const before = await storedFacts(page, day);

    const session = await context.newCDPSession(page);
    await page.goto('about:blank');
    await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
    await page.goto(origin);
    await page.getByRole('button', { name: 'Sample day' }).waitFor();

    // The evening's copy lost a line on its way; that line is in the morning's.
    const torn = evening.split('\n');
    torn[2] = '{"id":"';
    await choose(page, { 'evening.txt': torn.join('\n'), 'morning.txt': morning });
    await page.getByRole('dialog').getByText('6 entries can be read, 1 cannot.').waitFor();
    await tap(page, 'Import what can be read');
    await page
      .getByRole('dialog')
      .getByText('7 entries of 1 day: all checked one by one on this phone, 7 of them new.')
      .waitFor();
    expect(await storedFacts(page, day)).toEqual(before);
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /Harbour Lights/ })
      .tap();
    expect(await takesOnTheLine(page)).toBe(3);
    noteFault('database lost, rebuilt from two copies', '1 time, 7 facts', 0);
  });
});

test('a damaged entry in the database is told, and a copy of the day mends it', async () => {
  // Where a browser has files in place, the copy beside the database mends it at once.
  await onStage({ before: withoutCopies, ownBrowser: true }, async (stage) => {
    const { page } = stage;
    await startDay(page);
    await takeOne(page);
    await stage.waitSaved();
    const copy = await dayFile(page);
    const day = openDayId(page);
    const whole = await storedFacts(page, day);
    await spoilStored(page, [whole[1] as Stored], 'damage');
    await stage.reload();
    const told = page.getByRole('alert').filter({ hasText: '1 entry of this day cannot be read' });
    await told.waitFor();
    await later(stage);
    await choose(page, { 'copy.txt': copy });
    await tap(page, /^Import$/);
    await page.locator('.dock').waitFor();
    await told.waitFor({ state: 'detached' });
    expect(await storedFacts(page, day)).toEqual(whole);
    expect(foldStored(day, await storedFacts(page, day)).takes.size).toBe(1);
    noteFault('damaged entry in the database, mended by a copy', '1 time', 0);
  });
});
