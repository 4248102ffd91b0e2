import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { byId } from '../../src/facts/merge-facts.ts';
import { readCopies } from '../../src/storage/copy-lines.ts';
import { noteFault } from './faults-table.ts';
import { onStage, type Stage } from './harness.ts';
import {
  changeCopies,
  copiedText,
  copyFiles,
  copyFolders,
  takeFromCopies,
  withoutCopies,
} from './stored-copies.ts';
import { openDayId, type Stored, spoilStored, storedFacts } from './stored-facts.ts';
import { startDay, takeOne, tap } from './tapping.ts';

/** The facts of such lines, whole or without a check. */
function factsIn(text: string) {
  const { whole, unchecked } = readCopies(text);
  return [...whole, ...unchecked];
}

const alertOf = (page: Page) => page.getByRole('alert').filter({ hasText: /\w/ });

/** How many facts are not there any more as they were. */
function lostOf(before: readonly unknown[], after: readonly unknown[]): number {
  const there = new Set(after.map((fact) => JSON.stringify(fact)));
  return before.filter((fact) => !there.has(JSON.stringify(fact))).length;
}

/** Leaves the app for a page of its origin that is no part of it: nothing writes while the test does. */
const leaveApp = async (stage: Stage): Promise<void> => {
  await stage.page.goto(`${stage.origin}/icon.svg`);
};

/** The browser wants an icon for a page that names none. */
const LEAVING = { forgives: /favicon/ };

/** A day of two takes that are saved, left with its app; gives its facts, the last Roll and Cut at the end. */
async function twoTakesAndLeave(stage: Stage): Promise<Stored[]> {
  await startDay(stage.page, 'Harbour');
  await takeOne(stage.page);
  await takeOne(stage.page);
  await stage.waitSaved();
  const facts = (await storedFacts(stage.page, openDayId(stage.page))) as Stored[];
  await leaveApp(stage);
  return facts;
}

/** Erases the only day, and waits until no copy of it is left. */
async function eraseTheDay({ page, origin }: Stage): Promise<void> {
  await page.goto(`${origin}/#/`);
  await tap(page, /^More about/);
  await tap(page, 'Erase this day');
  await tap(page, 'Erase from this phone');
  await expect.poll(() => copyFolders(page)).toEqual([]);
}

describe('an action that was killed between the copy and the database', () => {
  test('and had reached only the database is in the copy soon after the next start', async () => {
    await onStage({ ...LEAVING, ownBrowser: true }, async (stage) => {
      const facts = await twoTakesAndLeave(stage);
      const [roll, cut] = facts.slice(-2) as [Stored, Stored];
      await takeFromCopies(stage.page, [roll.id, cut.id]);
      expect(await copiedText(stage.page)).not.toContain(cut.id);
      await stage.page.goto(`${stage.origin}/#/day/${roll.day}/now`);
      await expect.poll(() => copiedText(stage.page)).toContain(cut.id);
      await stage.crash();
      stage.loseDatabase();
      await stage.relaunch();
      const after = await storedFacts(stage.page, roll.day);
      noteFault(
        'killed before the copy had it, then the database lost',
        '1 time, 2 facts',
        lostOf(facts, after),
      );
      expect(after).toEqual(facts);
    });
  });

  test('and had reached only the database is in the copy before the next one is called saved', async () => {
    // The browser is never idle: nothing is looked at before the tap.
    const before = (): void => {
      globalThis.requestIdleCallback = () => 0;
    };
    await onStage({ ...LEAVING, before }, async (stage) => {
      const facts = await twoTakesAndLeave(stage);
      const { day, id } = facts.at(-1)!;
      await takeFromCopies(stage.page, [id]);
      await stage.page.goto(`${stage.origin}/#/day/${day}/now`);
      await stage.page.locator('.dock').waitFor();
      expect(await copiedText(stage.page)).not.toContain(id);
      await tap(stage.page, /^Roll$/);
      await stage.waitSaved();
      expect(await copiedText(stage.page)).toContain(id);
    });
  });

  test('is not waited for where another window sleeps on its turn', async () => {
    await onStage(LEAVING, async (stage) => {
      const other = await stage.context.newPage();
      await other.goto(`${stage.origin}/icon.svg`);
      await other.evaluate(() => {
        void navigator.locks.request('rollbook-copies', () => new Promise(() => {}));
      });
      await stage.page.bringToFront();
      await startDay(stage.page, 'Harbour');
      const from = Date.now();
      await takeOne(stage.page);
      await stage.waitSaved();
      expect(Date.now() - from).toBeLessThan(5000);
      await expect.poll(() => copiedText(stage.page)).toContain('cutAt');
    });
  });

  test('and had reached only the copy is on the day again, of one day and of another, and it is said', async () => {
    await onStage({ ...LEAVING, ownBrowser: true }, async (stage) => {
      const facts = await twoTakesAndLeave(stage);
      const cut = facts.at(-1)!;
      await spoilStored(stage.page, [cut], 'remove');
      await stage.page.goto(`${stage.origin}/#/day/${cut.day}/now`);
      await alertOf(stage.page).filter({ hasText: '1 entry was in the second copy only' }).waitFor();
      expect(await stage.page.locator('.dock > .roll').textContent()).toBe('Roll');
      expect(await storedFacts(stage.page, cut.day)).toEqual(facts);
      // Nothing of the day at all, and the list of days on the screen.
      await leaveApp(stage);
      await spoilStored(stage.page, facts, 'remove');
      await stage.page.goto(`${stage.origin}/#/`);
      await alertOf(stage.page)
        .filter({ hasText: `${facts.length} entries were in the second copy only` })
        .waitFor();
      const after = await storedFacts(stage.page, cut.day);
      const tried = `2 times, 1 and ${facts.length} facts`;
      noteFault('killed before the database had it', tried, lostOf(facts, after));
      expect(after).toEqual(facts);
    });
  });

  test('is not looked for in a day that was erased', async () => {
    await onStage(LEAVING, async (stage) => {
      const [fact] = await twoTakesAndLeave(stage);
      await eraseTheDay(stage);
      await stage.reload();
      await expect.poll(() => copyFolders(stage.page)).toEqual([]);
      expect(await storedFacts(stage.page, fact!.day)).toEqual([]);
    });
  });
});

test('an entry damaged in the database is mended from the copy beside it', async () => {
  await onStage(LEAVING, async (stage) => {
    const facts = await twoTakesAndLeave(stage);
    const cut = facts.at(-1)!;
    await spoilStored(stage.page, [cut], 'damage');
    await stage.page.goto(`${stage.origin}/#/day/${cut.day}/now`);
    await alertOf(stage.page).filter({ hasText: '1 entry was in the second copy only' }).waitFor();
    expect(await storedFacts(stage.page, cut.day)).toEqual(facts);
  });
});

test('a letter changed in the database is mended from the copy, and one changed in the copy from the database', async () => {
  await onStage(LEAVING, async (stage) => {
    const facts = await twoTakesAndLeave(stage);
    const [head] = facts as [Stored];
    const changed = JSON.parse(JSON.stringify(head).replace('Harbour', 'Harbohr'));
    await spoilStored(stage.page, [changed], 'change');
    await stage.page.goto(`${stage.origin}/#/day/${head.day}/now`);
    await expect.poll(() => storedFacts(stage.page, head.day)).toEqual(facts);
    await stage.reload();
    await expect.poll(async () => (await copyFiles(stage.page)).length).toBe(1);
    await leaveApp(stage);
    // A day at rest is not looked at; its next action aligns it.
    await changeCopies(stage.page, 'Harbour', 'Harbohr');
    await stage.page.goto(`${stage.origin}/#/day/${head.day}/now`);
    await takeOne(stage.page);
    await stage.waitSaved();
    await stage.reload();
    await expect.poll(() => copiedText(stage.page)).not.toContain('Harbohr');
    expect(await storedFacts(stage.page, head.day)).toEqual(expect.arrayContaining(facts));
  });
});

test('a day at rest has one file, however often the app was opened', async () => {
  await onStage(LEAVING, async (stage) => {
    await startDay(stage.page, 'Harbour');
    for (let start = 0; start < 3; start += 1) {
      await takeOne(stage.page);
      await stage.waitSaved();
      await stage.reload();
    }
    const names = async (): Promise<string[]> => (await copyFiles(stage.page)).map(({ name }) => name);
    await expect.poll(names).toEqual([expect.stringMatching(/^whole-/)]);
    const all = await copiedText(stage.page);
    const day = openDayId(stage.page);
    expect(factsIn(all).sort(byId)).toEqual(await storedFacts(stage.page, day));
  });
});

describe('a database that the browser itself threw away', () => {
  test('is put back fact by fact from the copy beside it, killed or not, and it is said', async () => {
    await onStage({ ownBrowser: true }, async (stage) => {
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
      await alertOf(stage.page).filter({ hasText: 'The browser lost its database' }).waitFor();
      await alertOf(stage.page)
        .filter({ hasText: `${before.length} entries of 1 day: all checked` })
        .waitFor();
      const after = await storedFacts(stage.page, day);
      const tried = `1 time, ${before.length} facts`;
      noteFault('database thrown away by the browser', tried, lostOf(before, after));
      expect(after).toEqual(before);
      // A second loss finds what came back copied as well.
      await stage.crash();
      stage.loseDatabase();
      await stage.relaunch();
      expect(await storedFacts(stage.page, day)).toEqual(before);
    });
  });

  test('is not put back with a letter that was changed in the copy, nor called checked', async () => {
    await onStage({ ...LEAVING, ownBrowser: true }, async (stage) => {
      const facts = await twoTakesAndLeave(stage);
      const { day } = facts[0]!;
      await changeCopies(stage.page, 'Harbour', 'Harbohr');
      await stage.crash();
      stage.loseDatabase();
      await stage.relaunch();
      await alertOf(stage.page).filter({ hasText: '1 entry was damaged in the copy' }).waitFor();
      const after = await storedFacts(stage.page, day);
      noteFault(
        'letter flipped in the copy, then the database lost',
        `1 time, ${facts.length} facts, 1 of them damaged and told`,
        lostOf(facts.slice(1), after) + (JSON.stringify(after).includes('Harbohr') ? 1 : 0),
      );
      expect(after).toEqual(facts.slice(1));
    });
  });

  test('gives back the day that was written last before the first screen, and the others behind it', async () => {
    await onStage({ ownBrowser: true }, async (stage) => {
      for (const production of ['First', 'Second', 'Third']) {
        await stage.page.goto(`${stage.origin}/#/`);
        await startDay(stage.page, production);
        await takeOne(stage.page);
        await stage.waitSaved();
      }
      await stage.crash();
      stage.loseDatabase();
      await stage.relaunch();
      expect(await stage.page.locator('.day-row').first().textContent()).toContain('Third');
      await alertOf(stage.page).filter({ hasText: '9 entries of 3 days: all checked' }).waitFor();
      expect(await stage.page.locator('.day-row').count()).toBe(3);
    });
  });

  test('does not bring back a day that was erased while another window had it open', async () => {
    await onStage({ ownBrowser: true }, async (stage) => {
      await startDay(stage.page, 'Erased Harbour');
      await takeOne(stage.page);
      await stage.waitSaved();
      const day = openDayId(stage.page);
      const other = await stage.openWindow(`/#/day/${day}/now`);
      await takeOne(other);
      await stage.waitSaved(other);
      expect(await copiedText(stage.page)).toContain('Erased Harbour');
      await eraseTheDay(stage);
      await stage.crash();
      stage.loseDatabase();
      await stage.relaunch();
      await stage.page.getByRole('button', { name: 'New day' }).waitFor();
      expect(await stage.page.locator('.day-row').count()).toBe(0);
    });
  });

  test('is kept alone, and called saved, where the browser has no such files', async () => {
    await onStage({ before: withoutCopies }, async (stage) => {
      await startDay(stage.page, 'Harbour');
      await takeOne(stage.page);
      await stage.waitSaved();
      expect((await storedFacts(stage.page, openDayId(stage.page))).length).toBeGreaterThan(2);
    });
  });
});
