import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import type { Speaker } from '../day/say.ts';
import type { Stage } from './harness.ts';
import { paste } from './tapping.ts';

/** Opens a day that somebody said, as a file that is imported. */
export async function openSaid({ page, waitSaved }: Stage, { facts }: Pick<Speaker, 'facts'>): Promise<void> {
  await page.getByRole('button', { name: 'Import day file' }).tap();
  await paste(page.getByLabel('Or paste the text'), writeDayFile('day-1', 'Harbour Lights', facts));
  await page.getByRole('button', { name: 'Import what was pasted' }).tap();
  await page.locator('.dock').waitFor();
  await waitSaved();
}
