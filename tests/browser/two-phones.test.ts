import { expect, test } from 'vitest';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { MORNING, speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { onStage } from './harness.ts';
import { paste } from './tapping.ts';

/** Two phones that took in the same morning and then said different things without knowing of each other. */
function twoPhones() {
  const morning = speaker('phonea');
  morning.say(...SMALL_RIG, ...SMALL_CAST);
  const early = [...morning.facts];
  morning.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  morning.say(take('24', 1, 1));
  const other = speaker('phoneb', MORNING + 3 * 3_600_000);
  other.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' });
  other.say(take('24', 1, 1));
  const file = (facts: typeof early): string => writeDayFile('day-1', 'Merge', facts);
  return { a: file(morning.facts), b: file([...early, ...other.facts]) };
}

test('two phones that differ are merged without loss, and the day shows what cannot both be true', async () => {
  const { a, b } = twoPhones();
  await onStage({ clock: '2026-10-07T18:00:00Z' }, async (stage) => {
    const { page } = stage;
    const importFile = async (text: string): Promise<void> => {
      await page.getByRole('button', { name: 'Import day file' }).tap();
      await paste(page.getByLabel('Or paste the text'), text);
      await page.getByRole('button', { name: 'Import what was pasted' }).tap();
      await page.locator('.dock').waitFor();
      await stage.waitSaved();
    };
    const toDays = () =>
      page.evaluate(() => {
        location.hash = '#/';
      });
    await importFile(a);
    expect(await page.locator('.summary').textContent()).not.toContain('conflict');
    await toDays();
    await importFile(b);
    await page.getByRole('button', { name: '2 conflicts' }).tap();
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
    await page.getByRole('link', { name: 'Wrap', exact: true }).tap();
    await page.getByRole('button', { name: /^Two phones differ: A1 on Dora, or A1 on Ines/ }).waitFor();
    await stage.reload();
    const report = (await page.locator('.report-text').first().textContent()) ?? '';
    expect(report.match(/24A\/1 /g)!.length).toBeGreaterThanOrEqual(2);
    // The same file again brings nothing new.
    await toDays();
    await page.getByRole('button', { name: 'Import day file' }).tap();
    await paste(page.getByLabel('Or paste the text'), b);
    await page.getByText(/^Nothing new: all \d+ entries are here already\.$/).waitFor();
    await page.getByRole('link', { name: 'Open the day' }).tap();
    await page.locator('.dock').waitFor();
  });
});
