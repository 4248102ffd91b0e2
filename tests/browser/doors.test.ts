import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sampleText } from '../../sample-days/load.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { speaker, take } from '../day/say.ts';
import { LONG, noteFault } from './faults-table.ts';
import { onStage, type Stage } from './harness.ts';
import { openDayId, storedFacts } from './stored-facts.ts';
import { paste, startDay, takeOne, tap } from './tapping.ts';

/** A page of another origin with a form for the app's share target. `/hidden` asks the browser not to say where it is. */
let elsewhere: Server;
let target = '';
beforeAll(async () => {
  elsewhere = createServer((request, response) => {
    const hidden = request.url === '/hidden' ? '<meta name="referrer" content="no-referrer">' : '';
    response.setHeader('Content-Type', 'text/html');
    response.end(
      `<!doctype html><link rel="icon" href="data:,">${hidden}<form method="post" enctype="multipart/form-data" action="${target}/take-in">
        <input type="file" name="files"><button>Win a prize</button></form>`,
    );
  });
  await new Promise<void>((done) => elsewhere.listen(0, '127.0.0.1', done));
});
afterAll(() => void elsewhere.close());

/** What such a page does to whoever taps it. */
async function postFrom({ page, origin }: Stage, path: '/' | '/hidden', text: string, on: Page = page) {
  target = origin;
  await on.goto(`http://127.0.0.1:${(elsewhere.address() as AddressInfo).port}${path}`);
  const file = { name: 'day.txt', mimeType: 'text/plain', buffer: Buffer.from(text) };
  await on.locator('input').setInputFiles(file);
  await on.locator('button').tap();
}
const FOREIGN = { worker: true, forgives: /foreign request: http:\/\/127\.0\.0\.1/ };

/** Everything that the phone's database has, of all days, read past the app. */
const everything = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      new Promise<string>((done, refuse) => {
        const opening = indexedDB.open('rollbook');
        opening.onerror = () => refuse(opening.error);
        opening.onsuccess = () => {
          const db = opening.result;
          const tx = db.transaction(['facts', 'days']);
          const [facts, days] = [tx.objectStore('facts').getAll(), tx.objectStore('days').getAll()];
          tx.oncomplete = () => {
            db.close();
            done(JSON.stringify([facts.result, days.result]));
          };
        };
      }),
  );
const isWaiting = (page: Page): Promise<boolean> => page.evaluate(() => caches.has('rollbook-shared'));
const door = (page: Page) => page.getByRole('dialog', { name: 'Import this?' });

/** The day at the address, as a stranger would have it: renamed, a take added, and one left rolling. */
const strangers = (day: string): string => {
  const one = speaker('forged', Date.now());
  one.say({ kind: 'day-described', fields: { production: 'Renamed by a page' } });
  one.say(take('99', 0, 1));
  one.say(take('99', 0, 2, { start: null, length: null, rolledAt: Date.now() }));
  return writeDayFile(
    day,
    '',
    one.facts.map((fact) => ({ ...fact, day })),
  );
};

describe('a form that a page elsewhere posts to the share target', () => {
  test('is turned away where the page can be told: nothing is written, nothing waits, and it is said', async () => {
    await onStage(FOREIGN, async (stage) => {
      const { page } = stage;
      await stage.waitOfflineReady();
      const before = await everything(page);
      await postFrom(stage, '/', sampleText('full'));
      await page.getByRole('alert').filter({ hasText: 'A web page tried to send a file' }).waitFor();
      await page.getByRole('button', { name: 'New day' }).waitFor();
      expect(await isWaiting(page)).toBe(false);
      expect(await everything(page)).toBe(before);
    });
  });

  test('changes nothing where the page hides: what it would change is shown, and waits for a tap', async () => {
    await onStage(FOREIGN, async (stage) => {
      const { page } = stage;
      await stage.waitOfflineReady();
      const before = await everything(page);
      await postFrom(stage, '/hidden', sampleText('full'));
      await door(page).getByText('511 new entries').waitFor();
      await door(page).getByText('not on this phone yet').waitFor();
      await door(page).getByText('or a web page').waitFor();
      await stage.screenshot('door-new-day');
      await page.waitForTimeout(500);
      expect(await everything(page)).toBe(before);
      await tap(page, 'Not now');
      await page.getByRole('button', { name: 'New day' }).waitFor();
      await page.reload();
      await page.getByRole('button', { name: /A file was shared/ }).waitFor();
      await stage.screenshot('door-waiting');
      expect(await everything(page)).toBe(before);
      await tap(page, /A file was shared/);
      await door(page).getByText('511 new entries').waitFor();
      await tap(page, 'Discard what was shared');
      await page.getByRole('button', { name: 'New day' }).waitFor();
      expect(await isWaiting(page)).toBe(false);
      expect(await everything(page)).toBe(before);
    });
  });
});

describe('arrivals while a take is rolling', () => {
  test('by every way write nothing before the tap, and the take is cut where it was rolled', async () => {
    const before = (): void => {
      Object.defineProperty(window, 'launchQueue', {
        value: { setConsumer: (consume: unknown) => Object.assign(window, { launch: consume }) },
      });
    };
    let arrived = 0;
    let written = 0;
    await onStage({ ...FOREIGN, before }, async (stage) => {
      const { page } = stage;
      await startDay(page);
      await takeOne(page);
      await stage.waitOfflineReady();
      const day = openDayId(page);
      const text = strangers(day);
      const address = `${stage.origin}/#/day/${day}/now`;
      for (let round = 0; round < (LONG ? 20 : 1); round += 1) {
        await tap(page, /^Roll$/);
        await stage.waitSaved();
        const rolling = JSON.stringify(await storedFacts(page, day));
        const unchanged = async (): Promise<void> => {
          if (JSON.stringify(await storedFacts(page, day)) !== rolling) written += 1;
          expect(JSON.stringify(await storedFacts(page, day))).toBe(rolling);
        };
        // A page in another tab, that can be told and that hides.
        const other = await stage.context.newPage();
        for (const path of ['/', '/hidden'] as const) {
          await postFrom(stage, path, text, other);
          await (path === '/'
            ? other.getByRole('alert').filter({ hasText: 'A web page tried' })
            : door(other).getByText('Production: was Harbour Lights')
          ).waitFor();
          arrived += 1;
          await unchanged();
        }
        await other.close();
        // A file opened with the app: the screen shows the door, and Not now leads back to the take.
        await page.bringToFront();
        await expect.poll(() => page.evaluate(() => 'launch' in window)).toBe(true);
        await page.evaluate((content) => {
          const file = new File([content], 'day.txt', { type: 'text/plain' });
          (window as unknown as { launch(launched: object): void }).launch({
            files: [{ getFile: async () => file }],
          });
        }, text);
        await door(page).getByText('Production: was Harbour Lights, is Renamed by a page.').waitFor();
        await door(page).getByText('99/2 is still rolling on the other phone').waitFor();
        if (round === 0) await stage.screenshot('door-known-day');
        arrived += 1;
        await unchanged();
        await tap(page, 'Not now');
        await page.getByRole('button', { name: 'Cut', exact: true }).waitFor();
        await unchanged();
        // A link to a day that is none, and back.
        await page.goto(`${stage.origin}/#/day/planted-by-a-link/now`);
        await page.getByRole('heading', { name: 'No such day on this phone' }).waitFor();
        arrived += 1;
        await unchanged();
        await page.goto(address);
        await tap(page, /^Cut$/);
        await stage.waitSaved();
        await page.evaluate(() => caches.delete('rollbook-shared'));
      }
      expect(await everything(page)).not.toContain('Renamed by a page');
      expect(await everything(page)).not.toContain('planted-by-a-link');
    });
    noteFault('arrivals while a take is rolling', `${arrived} arrivals, by four ways`, written);
    expect(arrived).toBe(LONG ? 80 : 4);
  });
});

test('pasted text is shown for what it would change, and imported by the tap after that', async () => {
  await onStage({}, async (stage) => {
    const { page } = stage;
    const before = await everything(page);
    await tap(page, 'Import day file');
    await page.getByLabel('Or paste the text').fill('a shopping list');
    await page.getByText('This is not a day file').first().waitFor();
    await paste(page.getByLabel('Or paste the text'), sampleText('small'));
    await door(page).getByText('41 new entries').waitFor();
    await page.waitForTimeout(300);
    expect(await everything(page)).toBe(before);
    await tap(page, 'Import what was pasted');
    await page.locator('.dock').waitFor();
    await stage.waitSaved();
    expect(await storedFacts(page, 'sample-small')).toHaveLength(41);
  });
});

describe('a link to a day that the phone does not have', () => {
  test('says that there is none, offers no Roll, and leads to the days and to a new one', async () => {
    await onStage({ path: '/#/day/chosen-by-the-link/now' }, async (stage) => {
      const { page } = stage;
      await page.getByRole('heading', { name: 'No such day on this phone' }).waitFor();
      expect(await page.getByRole('button', { name: 'Roll', exact: true }).count()).toBe(0);
      await stage.screenshot('no-such-day');
      await page.getByRole('link', { name: 'All days' }).tap();
      await page.getByRole('button', { name: 'New day' }).waitFor();
      expect(await page.locator('.day-row').count()).toBe(0);
      await page.goto(`${stage.origin}/#/day/chosen-by-the-link/line`);
      await tap(page, 'New day');
      await page.getByRole('dialog', { name: 'New day' }).waitFor();
      await tap(page, 'Start the day');
      await page.getByRole('heading', { name: 'Set up the rig' }).waitFor();
      expect(openDayId(page)).not.toBe('chosen-by-the-link');
      expect(await everything(page)).not.toContain('chosen-by-the-link');
    });
  });
});
