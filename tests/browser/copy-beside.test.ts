import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { noteFault } from './faults-table.ts';
import { onStage } from './harness.ts';
import { openDayId, storedFacts } from './stored-facts.ts';
import { startDay, takeOne, tap } from './tapping.ts';

const alertOf = (page: Page) => page.getByRole('alert').filter({ hasText: /\w/ });

/** Folders of the copies beside the database, each with what its files hold together. */
const copiesOf = (page: Page): Promise<Record<string, string>> =>
  page.evaluate(async () => {
    const found: Record<string, string> = {};
    const root = await navigator.storage.getDirectory();
    const copies = await root.getDirectoryHandle('copies', { create: true });
    for await (const day of copies.values() as AsyncIterable<FileSystemDirectoryHandle>) {
      found[day.name] = '';
      for await (const file of day.values() as AsyncIterable<FileSystemFileHandle>)
        found[day.name] += await (await file.getFile()).text();
    }
    return found;
  });

describe('a database that the browser itself threw away', () => {
  test('is put back fact by fact from the copy beside it, killed or not, and it is said', async () => {
    await onStage({}, async (stage) => {
      await startDay(stage.page, 'Harbour');
      await takeOne(stage.page);
      await stage.reload();
      await takeOne(stage.page);
      await stage.waitSaved();
      const day = openDayId(stage.page);
      const before = await storedFacts(stage.page, day);
      expect(before.length).toBeGreaterThan(4);
      await stage.crash();
      stage.loseDatabase();
      await stage.relaunch();
      await alertOf(stage.page).filter({ hasText: 'The browser had lost its database' }).waitFor();
      await alertOf(stage.page)
        .filter({ hasText: `${before.length} entries of 1 day: all checked` })
        .waitFor();
      const after = await storedFacts(stage.page, day);
      const ids = new Set(after.map((fact) => JSON.stringify(fact)));
      const lost = before.filter((fact) => !ids.has(JSON.stringify(fact))).length;
      noteFault('database thrown away by the browser', `1 time, ${before.length} facts`, lost);
      expect(after).toEqual(before);
      // A second loss finds what came back copied as well.
      await stage.crash();
      stage.loseDatabase();
      await stage.relaunch();
      expect(await storedFacts(stage.page, day)).toEqual(before);
    });
  });

  test('does not bring back a day that was erased while another window had it open', async () => {
    await onStage({}, async (stage) => {
      await startDay(stage.page, 'Erased Harbour');
      await takeOne(stage.page);
      await stage.waitSaved();
      const day = openDayId(stage.page);
      const other = await stage.openWindow(`/#/day/${day}/now`);
      await takeOne(other);
      await stage.waitSaved(other);
      expect(Object.values(await copiesOf(stage.page)).join('')).toContain('Erased Harbour');
      await stage.page.goto(`${stage.origin}/#/`);
      await tap(stage.page, /^More about/);
      await tap(stage.page, 'Erase this day');
      await tap(stage.page, 'Erase it from this phone');
      await expect.poll(() => copiesOf(stage.page)).toEqual({});
      await stage.crash();
      stage.loseDatabase();
      await stage.relaunch();
      await stage.page.getByRole('button', { name: 'New day' }).waitFor();
      expect(await stage.page.locator('.day-row').count()).toBe(0);
    });
  });

  test('is kept alone, and called saved, where the browser has no such files', async () => {
    const before = (): void => {
      Object.defineProperty(StorageManager.prototype, 'getDirectory', {
        value: () => Promise.reject(new DOMException('not here', 'SecurityError')),
      });
    };
    await onStage({ before }, async (stage) => {
      await startDay(stage.page, 'Harbour');
      await takeOne(stage.page);
      await stage.waitSaved();
      expect((await storedFacts(stage.page, openDayId(stage.page))).length).toBeGreaterThan(2);
    });
  });
});
