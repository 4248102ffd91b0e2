import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { loadSampleFile } from '../../sample-days/load.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { LONG, noteFault, seededNumbers } from './faults-table.ts';
import { onStage, type Stage } from './harness.ts';
import { hearSaved, tapAsFastAsYouCan } from './rapid-taps.ts';
import { foldStored, openDayId, storedFacts } from './stored-facts.ts';
import { paste, startDay, tab, tap } from './tapping.ts';

const SEED = 20_261_007;
const KILLS = LONG ? 200 : 4;
const KILLS_OF_LAYING = LONG ? 20 : 2;
const KILLS_OF_IMPORTING = LONG ? 40 : 2;
/** A day of thousands of takes is no day; the next one begins after so many kills. */
const KILLS_A_DAY = 20;

const wait = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

const show = async (stage: Stage, day: string): Promise<void> => {
  await stage.page.goto(`${stage.origin}/#/day/${day}/now`);
  await stage.page.locator('.dock').waitFor();
};

/**
 * Taps until the kill and gives what the screen had called saved before it. The kill comes at once after a word that
 * all is saved, where a word given too early would be found out.
 */
async function killWhileTapping(stage: Stage, afterMs: number): Promise<{ rolls: number; cuts: number }> {
  const heard = hearSaved(stage.page);
  const tapping = tapAsFastAsYouCan(stage.page, 60_000);
  // Looked at below: it may end while nobody looks.
  tapping.catch(() => {});
  await wait(afterMs);
  await new Promise<void>((done, refuse) => {
    let isKilled = false;
    heard.onNext = () => {
      isKilled = true;
      heard.onNext = () => {};
      stage.crash().then(done, refuse);
    };
    // Taps that end by themselves give no word to kill at.
    tapping.catch((error: unknown) => isKilled || refuse(error));
  });
  await tapping.catch(() => undefined);
  return heard;
}

/** Says the app that the browser's database was gone at this start, and that the copy beside it was put in its place? */
const hasLostDatabase = async (page: Page): Promise<boolean> =>
  (await page.getByRole('alert').filter({ hasText: 'lost its database' }).count()) > 0;

/** Starts a day and taps to lay a large recorder in it; gives how many facts the day had before that. */
async function layRig(page: Page, production: string): Promise<number> {
  await page.goto(`${new URL(page.url()).origin}/#/`);
  await startDay(page, production);
  await page.locator('[data-unsaved="0"]').first().waitFor({ state: 'attached' });
  const before = (await storedFacts(page, openDayId(page))).length;
  await tab(page, 'Rig');
  await page.getByLabel('Tracks and inputs').fill('32 tracks, 8 mic, 24 AES3');
  await tap(page, 'Use this recorder');
  return before;
}

/** What the screen says: it has the rig, and everything is saved. One look, because the two must be of one moment. */
const isLaidAndSaved = (page: Page): Promise<boolean> =>
  page.evaluate(
    () =>
      document.querySelector('[data-unsaved="0"]') !== null &&
      ![...document.querySelectorAll('h1')].some(({ textContent }) => textContent === 'Set up the rig'),
  );

describe(`a browser killed at random moments, seed ${SEED}`, () => {
  test(
    `${KILLS} kills while takes are logged: nothing that the screen called saved is lost`,
    async () => {
      const random = seededNumbers(SEED);
      let lost = 0;
      let logged = 0;
      let called = 0;
      let thrownAway = 0;
      await onStage({ ownBrowser: true }, async (stage) => {
        let day = '';
        let before = 0;
        for (let kill = 0; kill < KILLS; kill += 1) {
          if (kill % KILLS_A_DAY === 0) {
            await stage.page.goto(`${stage.origin}/#/`);
            await startDay(stage.page, `Day of kill ${kill}`);
            await stage.waitSaved();
            day = openDayId(stage.page);
            before = 1;
          }
          const saved = await killWhileTapping(stage, 200 + random() * 1300);
          await stage.relaunch();
          // Not one fact but all of them: the browser found its own file torn and began a new one.
          if (await hasLostDatabase(stage.page)) thrownAway += 1;
          await show(stage, day);
          const stored = await storedFacts(stage.page, day);
          const { takes } = foldStored(day, stored);
          const cuts = [...takes.values()].filter(({ cutAt }) => cutAt !== undefined).length;
          lost += Math.max(0, saved.rolls - takes.size) + Math.max(0, saved.cuts - cuts);
          // The screen counts all takes of the day; those of earlier kills were called saved by earlier windows.
          called += Math.max(0, saved.rolls + saved.cuts - (before - 1));
          logged += stored.length - before;
          before = stored.length;
        }
      });
      const whole = `the browser threw its database away ${thrownAway} times`;
      const tried = `${KILLS} kills, ${logged} facts kept, ${called} called saved, ${whole}`;
      noteFault('browser killed while takes are logged', tried, lost);
      console.log(`${tried}, ${lost} lost`);
      expect(lost).toBe(0);
      expect(called).toBeGreaterThan(LONG ? 5000 : 10);
      expect(logged).toBeGreaterThan(LONG ? 10_000 : 20);
    },
    LONG ? 3_600_000 : 240_000,
  );

  test(
    `${KILLS_OF_LAYING} kills while a rig is laid: its batch is there whole or not at all, and whole where it was called saved`,
    async () => {
      const random = seededNumbers(SEED + 2);
      let lost = 0;
      let whole = 0;
      await onStage({ ownBrowser: true }, async (stage) => {
        const { page } = stage;
        const size = await layRig(page, 'Rig that nobody kills');
        await stage.waitSaved();
        const laid = (await storedFacts(page, openDayId(page))).length - size;
        expect(laid).toBeGreaterThan(1);
        for (let kill = 0; kill < KILLS_OF_LAYING; kill += 1) {
          const before = await layRig(stage.page, `Rig of kill ${kill}`);
          const day = openDayId(stage.page);
          await wait(random() * 60);
          const saved = await isLaidAndSaved(stage.page);
          await stage.crash();
          await stage.relaunch();
          const stored = (await storedFacts(stage.page, day)).length - before;
          if (stored === laid) whole += 1;
          else if (stored !== 0 || saved) lost += 1;
        }
      });
      const tried = `${KILLS_OF_LAYING} kills, ${whole} whole, ${KILLS_OF_LAYING - whole - lost} not begun`;
      noteFault('browser killed while a rig is laid', tried, lost);
      console.log(tried);
      expect(lost).toBe(0);
    },
    LONG ? 3_600_000 : 240_000,
  );

  test(
    `${KILLS_OF_IMPORTING} kills while a day file is imported: the day is there whole or not at all`,
    async () => {
      const random = seededNumbers(SEED + 1);
      const sample = loadSampleFile('full').stored;
      let half = 0;
      let whole = 0;
      await onStage({ ownBrowser: true }, async (stage) => {
        for (let kill = 0; kill < KILLS_OF_IMPORTING; kill += 1) {
          const day = `killed-${kill}`;
          const facts = sample.map((fact) => ({ ...fact, day }));
          const text = writeDayFile(day, 'Killed', facts);
          await stage.page.goto(`${stage.origin}/#/`);
          await tap(stage.page, /^Import day file/);
          await paste(stage.page.getByLabel('Or paste the text'), text);
          await tap(stage.page, 'Import what was pasted');
          await wait(random() * 500);
          const saved = await stage.page.locator('[data-unsaved="0"]').count();
          await stage.crash();
          await stage.relaunch();
          const stored = (await storedFacts(stage.page, day)).length;
          if (stored === facts.length) whole += 1;
          else if (stored > 0 || saved > 0) half += 1;
        }
      });
      const tried = `${KILLS_OF_IMPORTING} kills, ${whole} whole, ${KILLS_OF_IMPORTING - whole} not begun`;
      noteFault('browser killed while a day file is imported', tried, half);
      console.log(tried);
      expect(half).toBe(0);
    },
    LONG ? 3_600_000 : 240_000,
  );
});
