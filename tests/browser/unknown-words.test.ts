import { expect, test } from 'vitest';
import { loadSampleFile } from '../../sample-days/load.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { versionOf } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { factId } from '../../src/shared/ids.ts';
import { PAGES, TABS } from '../../src/ui/frame/route.ts';
import { ENUMERATIONS, putWord } from '../facts/enumerations.ts';
import { EXAMPLE_BODIES } from '../facts/example-bodies.ts';
import { onStage } from './harness.ts';
import { storedFacts } from './stored-facts.ts';
import { paste, tap } from './tapping.ts';

const DAY_PAGES = [...TABS, ...Object.keys(PAGES)];
const NEWER = 'of-tomorrow';

/** The small sample day, and behind it an entry of every enumeration with a word that only a newer version knows. */
function newerDay(): { day: string; text: string; count: number } {
  const { day, stored } = loadSampleFile('small');
  const last = stored.at(-1)!;
  const take = stored.find(({ kind }) => kind === 'take-logged')!.id;
  const newer = ENUMERATIONS.map(({ kind, path }, at): Envelope => {
    const body: object = structuredClone(
      kind === 'take-described'
        ? { take, fields: EXAMPLE_BODIES['take-logged'].fields }
        : EXAMPLE_BODIES[kind],
    );
    putWord(body, path, NEWER);
    const id = factId(9001 + at, last.id.slice(7));
    return { id, day, kind, v: versionOf(kind), at: last.at + at, zone: last.zone, ...body };
  });
  const facts = [...stored, ...newer];
  return { day, text: writeDayFile(day, 'Newer', facts), count: facts.length };
}

test('a day of a newer version is imported whole, and every page shows what it can of it', async () => {
  await onStage({}, async ({ page, waitSaved, screenshot }) => {
    const { day, text, count } = newerDay();
    await tap(page, 'Import day file');
    await paste(page.getByLabel('Or paste the text'), text);
    await tap(page, 'Import what was pasted');
    await page.locator('.dock').waitFor();
    await waitSaved(page);
    expect(await storedFacts(page, day)).toHaveLength(count);
    for (const tab of DAY_PAGES) {
      await page.evaluate((to) => {
        location.hash = to;
      }, `#/day/${day}/${tab}`);
      await page.locator('main:not([aria-busy])').first().waitFor();
      await page.waitForTimeout(400);
      await screenshot(`newer-${tab}`);
      expect(await page.locator('main').first().textContent(), tab).not.toMatch(/undefined|NaN|\[object/);
    }
    await page.evaluate((to) => {
      location.hash = to;
    }, `#/day/${day}/now`);
    await tap(page, /^About this day/);
    await page.getByText(`What a newer version calls ${NEWER} is kept`).waitFor();
    await screenshot('newer-day-sheet');
    expect(await page.getByRole('dialog').textContent()).toContain(`unknown: ${NEWER}`);
  });
});
