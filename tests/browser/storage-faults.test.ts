import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { speaker, take } from '../day/say.ts';
import { noteFault } from './faults-table.ts';
import { onStage, type Stage } from './harness.ts';
import { openDayId, storedFacts } from './stored-facts.ts';
import { paste, startDay, tab, takeOne, takesOnTheLine, tap } from './tapping.ts';

/** Takes that were called out and are not on the line. */
function noteTakes(fault: string, said: number, found: number): void {
  noteFault(fault, `1 time, ${said} takes`, said - found);
  expect(found).toBe(said);
}

/**
 * No room left, from the next write on. The browser asks for the room once and believes the answer for half a minute,
 * so it starts anew before the room is taken.
 */
async function fillPhone(stage: Stage) {
  await stage.relaunch();
  const { page, context, origin } = stage;
  const session = await context.newCDPSession(page);
  await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 });
  await page.getByText('Harbour Lights').first().tap();
  await page.locator('.dock').waitFor();
  return { page, allow: () => session.send('Storage.overrideQuotaForOrigin', { origin }) };
}

describe('storage that fails under the app', () => {
  test('a browser that refuses a database is told in words, and the app works in memory', async () => {
    const before = (): void => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('no', 'SecurityError');
      };
    };
    await onStage({ before }, async ({ page }) => {
      await startDay(page);
      await page.getByRole('alert').filter({ hasText: 'Not kept' }).waitFor();
      expect(await page.locator('[data-saving]').textContent()).toContain('NOT KEPT');
      await takeOne(page);
      await takeOne(page);
      noteTakes('browser without a database', 2, await takesOnTheLine(page));
    });
  });

  test('a full phone: not saved in words, the action stays on the screen, and is saved once there is room', async () => {
    await onStage({ ownBrowser: true }, async (stage) => {
      await startDay(stage.page);
      await takeOne(stage.page);
      await stage.waitSaved();
      const { page, allow } = await fillPhone(stage);
      await takeOne(page);
      await takeOne(page);
      const banner = page.getByRole('alert').filter({ hasText: 'not saved' });
      await banner.filter({ hasText: 'the phone is full' }).waitFor();
      expect(await banner.textContent()).toContain('4 actions not saved');
      expect(await page.locator('[data-saving]').textContent()).toContain('NOT SAVED');
      expect(await page.locator('.dock-name strong').textContent()).toMatch(/\/4$/);
      await allow();
      await tap(page, 'Try now');
      await stage.waitSaved();
      await banner.waitFor({ state: 'detached' });
      await stage.reload();
      noteTakes('no room left, enforced by the browser', 3, await takesOnTheLine(page));
      stage.forgive(/QuotaExceeded/);
    });
  });

  test('a full phone that gets room again saves by itself', async () => {
    await onStage({ ownBrowser: true }, async (stage) => {
      await startDay(stage.page);
      await stage.waitSaved();
      const { page, allow } = await fillPhone(stage);
      await takeOne(page);
      await page.locator('[data-saving="not-saved"]').waitFor();
      await allow();
      await stage.waitSaved();
      await stage.relaunch();
      await stage.page.getByText('Harbour Lights').first().tap();
      expect(await takesOnTheLine(stage.page)).toBe(1);
    });
  });

  test('site data cleared under the open app: what is held is written back, and said loudly', async () => {
    await onStage({ ownBrowser: true }, async (stage) => {
      const { page, context, origin } = stage;
      await startDay(page);
      await takeOne(page);
      await takeOne(page);
      await stage.waitSaved();
      const session = await context.newCDPSession(page);
      await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
      await takeOne(page);
      const banner = page.getByRole('alert').filter({ hasText: 'emptied its database' });
      await banner.waitFor();
      await stage.waitSaved();
      // What started the day, and two takes of two taps each; the third take's Roll is new itself.
      expect(await banner.textContent()).toMatch(/ 5 entries of this day were still in this window/);
      await stage.reload();
      noteTakes('site data cleared under the open app', 3, await takesOnTheLine(page));
      await page.goto(origin);
      await page.getByText('Harbour Lights').first().waitFor();
    });
  });

  test('a newer version in another window: the older one lets go, says so, and loses nothing it was told after', async () => {
    await onStage({ ownBrowser: true }, async (stage) => {
      const { page } = stage;
      await startDay(page);
      await takeOne(page);
      await stage.waitSaved();
      const other = await stage.openWindow('/');
      const opened = await other.evaluate(
        () =>
          new Promise<string>((done) => {
            const request = indexedDB.open('rollbook', 2);
            request.onsuccess = () => {
              request.result.close();
              done('opened');
            };
            request.onerror = () => done(String(request.error));
          }),
      );
      expect(opened).toBe('opened');
      await page.getByRole('alert').filter({ hasText: 'A newer version is open' }).waitFor();
      await tab(page, 'Now');
      await tap(page, /^Roll$/);
      const banner = page.getByRole('alert').filter({ hasText: 'not saved' });
      await banner.filter({ hasText: 'Reload this window' }).waitFor();
      expect(await page.locator('.dock .roll').textContent()).toBe('Cut');
    });
  });
});

test('the browser is asked once to keep the data, from the first Cut, and the day says what it answered', async () => {
  const before = (): void => {
    const counted = window as unknown as { asked: number };
    counted.asked = 0;
    StorageManager.prototype.persisted = async () => false;
    StorageManager.prototype.persist = async () => {
      counted.asked += 1;
      return true;
    };
  };
  await onStage({ before }, async ({ page }) => {
    const asked = (): Promise<number> => page.evaluate(() => (window as unknown as { asked: number }).asked);
    await startDay(page);
    await tap(page, /^Roll$/);
    expect(await asked()).toBe(0);
    await tap(page, /^Cut$/);
    await takeOne(page);
    expect(await asked()).toBe(1);
    await tap(page, /^About this day/);
    await page.getByRole('dialog').getByText('not backed up').waitFor();
    await page.getByRole('dialog').getByText('promised not to clear').waitFor();
  });
});

/** A window of the same origin that is no part of the app and holds a connection to its database. */
async function holdDatabase(stage: Stage, version: number): Promise<{ letGo: () => Promise<void> }> {
  // The browser wants an icon for a page that names none.
  const iconMissed = stage.context.waitForEvent('console', (message) => /404/.test(message.text()));
  const other = await stage.context.newPage();
  await other.goto(`${stage.origin}/icon.svg`);
  await iconMissed;
  stage.forgive(/favicon/);
  await other.evaluate(
    (wanted) =>
      new Promise<void>((done, refuse) => {
        const opening = indexedDB.open('rollbook', wanted);
        opening.onerror = () => refuse(opening.error);
        opening.onsuccess = () => {
          Object.assign(globalThis, { held: opening.result });
          done();
        };
      }),
    version,
  );
  return { letGo: () => other.close() };
}

describe('a database that is not this version’s', () => {
  test('an old window that does not let go: the screen says to close it, and the app goes on when it is closed', async () => {
    await onStage({ ownBrowser: true }, async (stage) => {
      await startDay(stage.page);
      await takeOne(stage.page);
      await stage.waitSaved();
      const { letGo } = await holdDatabase(stage, 1);
      // The window that opens now is of a version with a newer database.
      await stage.page.addInitScript(() => {
        const { open } = IDBFactory.prototype;
        IDBFactory.prototype.open = function (name) {
          return open.call(this, name, 2);
        };
      });
      await stage.page.goto(`${stage.origin}/`);
      await stage.page.getByText('Close the other windows of this app').waitFor();
      await letGo();
      await stage.page.getByText('Harbour Lights').first().tap();
      noteTakes('database held by an old window', 1, await takesOnTheLine(stage.page));
    });
  });

  test('a newer version’s database met by the old app: the days are not called gone, and nothing is put over them', async () => {
    await onStage({ ownBrowser: true }, async (stage) => {
      const { page } = stage;
      await startDay(page);
      await takeOne(page);
      await stage.waitSaved();
      const day = openDayId(page);
      const newer = await holdDatabase(stage, 2);
      await newer.letGo();
      await page.goto(`${stage.origin}/#/`);
      await page.reload();
      await page
        .getByRole('alert')
        .filter({ hasText: 'newer version of the app has changed the database' })
        .waitFor();
      await page.getByRole('alert').filter({ hasText: 'Your days are in it, untouched' }).waitFor();
      const kept = (await storedFacts(page, day)).length;
      noteFault('database of a newer version met by the old app', '1 time, 3 facts', 3 - kept);
      expect(kept).toBe(3);
    });
  });
});

test('a day erased in one window is gone from the phone: databases, caches and the screens of all windows', async () => {
  await onStage({ ownBrowser: true, worker: true }, async (stage) => {
    const { page, origin } = stage;
    const phone = speaker('phonea');
    phone.say({ kind: 'day-described', fields: { production: 'Zebra Crossing', mixer: 'Zebra Mixer' } });
    phone.say({
      kind: 'voice-described',
      voice: 'v1',
      fields: { part: 'Zebra Part', person: 'Zebra Person' },
    });
    phone.say(take('24', 1, 1));
    await tap(page, /^Import day file/);
    await paste(page.getByLabel('Or paste the text'), writeDayFile('day-1', 'Zebra', phone.facts));
    await tap(page, 'Import what was pasted');
    await takeOne(page);
    await stage.waitSaved();
    await stage.waitOfflineReady();
    // The report with its files is made, and somebody is about to type.
    await tab(page, 'Wrap');
    await page.locator('.report-text').filter({ hasText: 'Zebra' }).waitFor();
    const list = await stage.openWindow('/');
    const other = await stage.openWindow('/');
    const shown = (window: Page): Promise<number> => window.getByText(/Zebra/).count();
    await expect.poll(() => shown(list)).toBeGreaterThan(0);
    expect(await keptSomewhere(page, 'Zebra')).not.toEqual([]);
    await tap(other, 'More about Zebra Crossing');
    await tap(other, 'Erase this day');
    await other.getByText('It is not backed up: do that first').waitFor();
    await tap(other, 'Erase from this phone');
    await page.getByText('Erased in another window').waitFor();
    await expect.poll(() => shown(list)).toBe(0);
    expect(await shown(page)).toBe(0);
    await page.getByRole('link', { name: 'All days' }).tap();
    expect(await storedFacts(page, 'day-1')).toEqual([]);
    expect(await keptSomewhere(page, 'Zebra')).toEqual([]);
    await page.goto(origin);
    await page.getByRole('heading', { name: 'Rollbook' }).waitFor();
    expect(await shown(page)).toBe(0);
  });
});

/** Where on the phone, within reach of the app, a word is still found. */
const keptSomewhere = (page: Page, word: string): Promise<string[]> =>
  page.evaluate(async (wanted) => {
    const found: string[] = [];
    const look = (where: string, content: unknown): void => {
      if (JSON.stringify(content)?.includes(wanted)) found.push(where);
    };
    look('localStorage', { ...localStorage });
    look('sessionStorage', { ...sessionStorage });
    look('names of databases', await indexedDB.databases());
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys()) {
        look(request.url, await (await cache.match(request))!.text());
      }
    }
    const db = await new Promise<IDBDatabase>((done, refuse) => {
      const opening = indexedDB.open('rollbook');
      opening.onsuccess = () => done(opening.result);
      opening.onerror = () => refuse(opening.error);
    });
    for (const store of db.objectStoreNames) {
      const all = db.transaction(store).objectStore(store).getAll();
      await new Promise((done) => {
        all.onsuccess = done;
      });
      look(`database, ${store}`, all.result);
    }
    db.close();
    return found;
  }, word);
