import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { LONG, noteFault } from './faults-table.ts';
import { onStage } from './harness.ts';
import { foldStored, openDayId, storedFacts } from './stored-facts.ts';
import { startDay, takeOne, takesOnTheLine, tap } from './tapping.ts';

const SECONDS = LONG ? 60 : 5;

/** Taps Roll and Cut for a while, as fast as the disk follows: at most a few taps ahead of it. */
const tapFor = (page: Page, forMs: number): Promise<void> =>
  page.evaluate(async (most) => {
    const end = performance.now() + most;
    const behind = (): number =>
      Number(document.querySelector<HTMLElement>('[data-unsaved]')!.dataset.unsaved);
    while (performance.now() < end) {
      if (behind() < 4) document.querySelector<HTMLElement>('.dock > .roll')!.click();
      await new Promise((done) => setTimeout(done, 5));
    }
  }, forMs);

/**
 * Notes in a window the ids of all facts it ever asked the database to keep, whatever became of that: the window
 * itself says which facts it was told.
 */
const noteAsked = (): void => {
  const { add } = IDBObjectStore.prototype;
  const asked: string[] = [];
  Object.assign(globalThis, { asked });
  IDBObjectStore.prototype.add = function (this: IDBObjectStore, ...args: Parameters<typeof add>) {
    if (this.name === 'facts') asked.push((args[0] as { id: string }).id);
    return add.apply(this, args);
  };
};
const askedBy = (page: Page): Promise<string[]> =>
  page.evaluate(() => [...new Set((globalThis as unknown as { asked: string[] }).asked)]);

/** The ids of this window's writer among the facts: six characters of the database, then the window's own five. */
const writersOf = (facts: readonly { readonly id: string }[]): Set<string> =>
  new Set(facts.map(({ id }) => id.slice(7)));

test(`two windows of one phone tap at once for ${SECONDS} s: nothing is lost, and both show the same`, async () => {
  await onStage({ before: noteAsked, ownBrowser: true }, async (stage) => {
    const one = stage.page;
    await startDay(one);
    await stage.waitSaved();
    const day = openDayId(one);
    const two = await stage.openWindow(`/#/day/${day}/now`);
    await two.locator('.dock').waitFor();
    // A window in the background draws seldom; this one is to be as busy as the other.
    const session = await stage.context.newCDPSession(one);
    await session.send('Emulation.setFocusEmulationEnabled', { enabled: true });
    await Promise.all([tapFor(one, SECONDS * 1000), tapFor(two, SECONDS * 1000)]);
    await Promise.all([stage.waitSaved(one), stage.waitSaved(two)]);

    const stored = (await storedFacts(one, day)) as { id: string }[];
    const counters = stored.map(({ id }) => id);
    const { takes, line } = foldStored(day, stored);
    expect(new Set(counters).size).toBe(stored.length);
    expect(writersOf(stored).size).toBe(2);
    expect(takes.size).toBeGreaterThan(SECONDS);
    // What each window shows, without a reload, is what the phone holds.
    await expect.poll(() => takesOnTheLine(one)).toBe(takes.size);
    await expect.poll(() => takesOnTheLine(two)).toBe(takes.size);
    const shown = (page: Page): Promise<string | null> => page.locator('ol.line').textContent();
    await expect.poll(async () => (await shown(one)) === (await shown(two))).toBe(true);
    const kept = new Set(counters);
    const asked = [...(await askedBy(one)), ...(await askedBy(two))];
    const lost = asked.filter((id) => !kept.has(id)).length;
    const tried = `${asked.length} facts asked for, ${line.length} on the line`;
    noteFault(`two windows tap at once for ${SECONDS} s`, tried, lost);
    console.log(`${tried}, ${lost} lost`);
    expect(lost).toBe(0);
    // Each fact came from one window, and nothing is stored that neither said.
    expect(asked.length).toBe(stored.length);
  });
});

test('a note goes to the take that its sheet was opened for, though another window logs one meanwhile', async () => {
  await onStage({}, async (stage) => {
    const one = stage.page;
    await startDay(one);
    await takeOne(one);
    await stage.waitSaved();
    const two = await stage.openWindow(`/#/day/${openDayId(one)}/now`);
    await two.locator('.dock').waitFor();
    await tap(one, /^note 1/);
    const sheet = one.getByRole('dialog', { name: 'Note on 1/1' });
    await sheet.waitFor();
    await takeOne(two);
    await stage.waitSaved(two);
    await one.locator('.dock-name strong', { hasText: '1/3' }).waitFor();
    expect(await sheet.count()).toBe(1);
    await sheet.getByRole('button', { name: 'plane', exact: true }).tap();
    await stage.waitSaved(one);
    const { takes } = foldStored(openDayId(one), await storedFacts(one, openDayId(one)));
    expect([...takes.values()].map(({ notes }) => notes.length)).toEqual([1, 0]);
  });
});
