import { describe, expect, test } from 'vitest';
import { onStage, type Stage } from './harness.ts';
import { startDay, tab, takeOne, takesOnTheLine, tap } from './tapping.ts';

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
      expect(await takesOnTheLine(page)).toBe(2);
    });
  });

  test('a full phone: not saved in words, the action stays on the screen, and is saved once there is room', async () => {
    await onStage({}, async (stage) => {
      await startDay(stage.page);
      await takeOne(stage.page);
      await stage.waitSaved();
      const { page, allow } = await fillPhone(stage);
      await takeOne(page);
      await takeOne(page);
      const banner = page.getByRole('alert').filter({ hasText: 'not saved' });
      await banner.filter({ hasText: 'no room left' }).waitFor();
      expect(await banner.textContent()).toContain('4 actions not saved');
      expect(await page.locator('[data-saving]').textContent()).toContain('NOT SAVED');
      expect(await page.locator('.dock-name strong').textContent()).toMatch(/\/4$/);
      await allow();
      await tap(page, 'Try now');
      await stage.waitSaved();
      await banner.waitFor({ state: 'detached' });
      await stage.reload();
      expect(await takesOnTheLine(page)).toBe(3);
      stage.forgive(/QuotaExceeded/);
    });
  });

  test('a full phone that gets room again saves by itself', async () => {
    await onStage({}, async (stage) => {
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
    await onStage({}, async (stage) => {
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
      expect(await banner.textContent()).toMatch(/ 5 entries of this day were held/);
      await stage.reload();
      expect(await takesOnTheLine(page)).toBe(3);
      await page.goto(origin);
      await page.getByText('Harbour Lights').first().waitFor();
    });
  });

  test('a newer version in another window: the older one lets go, says so, and loses nothing it was told after', async () => {
    await onStage({}, async (stage) => {
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
      await banner.filter({ hasText: 'Load this window again' }).waitFor();
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
    await page.getByRole('dialog').getByText('only on this phone').waitFor();
    await page.getByRole('dialog').getByText('promised not to clear').waitFor();
  });
});
