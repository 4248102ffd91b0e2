import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openStage, type Stage } from './harness.ts';
import { openDayId, storedFacts } from './stored-facts.ts';
import { startDay, takeOne, takesOnTheLine } from './tapping.ts';

interface Read {
  readonly version?: number;
  readonly day: string;
  readonly facts: { readonly id: string; readonly kind: string }[];
}
type Reading = { firstRead: Promise<Read | undefined> };

/** Before the app is told what was read first, another window logs one more take; nobody here hears it say so. */
function writeInBetween(): void {
  let reading: Promise<Read | undefined> | undefined;
  const write = async (read: Read | undefined): Promise<Read | undefined> => {
    const last = read?.facts.findLast(({ kind }) => kind === 'take-logged');
    if (!last) return read;
    const counter = Number.parseInt(read!.facts.at(-1)!.id.slice(0, 6), 36) + 1;
    const id = counter.toString(36).padStart(6, '0') + last.id.slice(6);
    const opening = indexedDB.open('rollbook');
    await new Promise((done) => {
      opening.onsuccess = done;
    });
    const tx = opening.result.transaction('facts', 'readwrite');
    tx.objectStore('facts').add({ ...last, id });
    await new Promise((done) => {
      tx.oncomplete = done;
    });
    opening.result.close();
    return read;
  };
  Object.defineProperty(globalThis, 'firstRead', {
    get: () => reading,
    set: (read: Promise<Read | undefined> | undefined) => {
      reading = read?.then(write);
    },
  });
}

describe('the first look at the database, while the app is on its way', () => {
  let stage: Stage;
  let day: string;
  beforeAll(async () => {
    stage = await openStage({ forgives: /favicon\.ico/ });
    await startDay(stage.page);
    await takeOne(stage.page);
    await takeOne(stage.page);
    await stage.waitSaved();
    day = openDayId(stage.page);
  });
  afterAll(() => stage.close());

  const lookAt = async (path: string): Promise<Read | undefined> => {
    const page = await stage.context.newPage();
    // A page of this origin without the app.
    await page.goto(`${stage.origin}/icon.svg${path}`);
    await page.evaluate(async () => {
      const script = document.createElementNS('http://www.w3.org/1999/xhtml', 'script') as HTMLScriptElement;
      script.src = '/first-look.js';
      document.documentElement.append(script);
      await new Promise((done) => {
        script.onload = done;
      });
    });
    const read = await page.evaluate(() => (globalThis as unknown as Reading).firstRead);
    await page.close();
    return read;
  };

  test('reads the day at the address, whole; and no day where there is none', async () => {
    const read = await lookAt(`#/day/${day}/now`);
    expect(read).toMatchObject({ version: 1, day, days: [{ id: day }] });
    expect(read!.facts).toEqual(await storedFacts(stage.page, day));
    expect(read!.facts.length).toBeGreaterThan(3);
    expect(await lookAt('#/')).toMatchObject({ day: '', facts: [], days: [{ id: day }] });
  });

  test('is caught up with what another window said since', async () => {
    const page = await stage.context.newPage();
    await page.addInitScript(writeInBetween);
    await page.goto(`${stage.origin}/#/day/${day}/now`);
    await page.locator('.dock').waitFor();
    await expect.poll(() => takesOnTheLine(page)).toBe(3);
    await page.close();
  });

  test('makes no database, and gives nothing', async () => {
    const page = await stage.context.newPage();
    await page.goto(`${stage.origin}/icon.svg`);
    await stage.page.goto('about:blank');
    await page.evaluate(
      () =>
        new Promise((done) => {
          indexedDB.deleteDatabase('rollbook').onsuccess = done;
        }),
    );
    expect((await lookAt(`#/day/${day}/now`))?.version).toBeUndefined();
    expect(await page.evaluate(() => indexedDB.databases())).toEqual([]);
    await page.close();
  });
});
