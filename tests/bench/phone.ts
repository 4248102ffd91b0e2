import type { Page } from 'playwright-core';
import { ensureBuilt } from '../../.ci/build.mjs';
import { type DaySize, type GeneratedDay, generateDay } from '../../sample-days/generate.ts';
import { foldDay } from '../../src/day/fold.ts';
import { openStage, type Stage } from '../browser/harness.ts';

/** How many times slower than this machine the slow phone is. */
export const SLOWDOWN = 6;

export const DAY = 'generated';
const DAY_SIZE: DaySize = { seed: 9, takes: 200, tracks: 16, performers: 12, day: DAY };
export const dayOfTakes = (takes: number): GeneratedDay => generateDay({ ...DAY_SIZE, takes });

export const pathOf = (day: string): string => `/#/day/${day}/now`;

/**
 * Runs before the page's own scripts: `usableAt` becomes the ms since the page was asked for at which `wanted` stood
 * on the screen, painted.
 */
function watchUsable(wanted: string): () => void {
  const script = (selector: string): void => {
    const look = new MutationObserver(() => {
      if (!document.querySelector(selector)) return;
      look.disconnect();
      // After the frame that shows it.
      requestAnimationFrame(() => {
        setTimeout(() => {
          (window as { usableAt?: number }).usableAt = performance.now();
        });
      });
    });
    look.observe(document, { childList: true, subtree: true });
  };
  return new Function(`(${script})(${JSON.stringify(wanted)})`) as () => void;
}

/** Long enough for any start; the moment itself is noted by the page. Looking earlier would slow the page down. */
const LOOK_AFTER_MS = 3000;

export async function usableAt(page: Page): Promise<number> {
  await page.waitForTimeout(LOOK_AFTER_MS);
  const at = await page.evaluate(() => (window as { usableAt?: number }).usableAt);
  if (at === undefined) throw new Error(`Not usable ${LOOK_AFTER_MS} ms after its start`);
  return at;
}

/** A day is usable when it says who is on which track and what Roll will log. */
export const USABLE = '.page:has(.rows .row):has(.roll) [data-unsaved="0"]';

/** The app on a phone with these days on it, opened at the first of them; the server is dead. */
export async function phoneWith(
  days: Iterable<GeneratedDay>,
  path = pathOf(DAY),
  folder?: string,
): Promise<Stage> {
  ensureBuilt();
  const stage = await openStage({
    path,
    before: watchUsable(USABLE),
    untouched: true,
    ...(folder && { folder }),
  });
  await stage.waitOfflineReady();
  for (const day of days) await keep(stage.page, day);
  await stage.killServer();
  return stage;
}

export const spreadsheetStage = (folder: string): Promise<Stage> =>
  openStage({ folder, before: watchUsable('#app canvas'), untouched: true });

/** Writes a day straight into the phone's journal, as the app would have kept it. */
async function keep(page: Page, { day, facts, title }: GeneratedDay): Promise<void> {
  const folded = foldDay(day, facts);
  const { production, label, date, sample } = folded.header;
  const outline = { id: day, production, label: label || title, date, sample };
  const counts = { takes: folded.takeOrder.length, facts: facts.length, lastAt: folded.lastAt };
  await page.evaluate(writeDay, { facts: JSON.stringify(facts), outline: { ...outline, ...counts } });
}

async function writeDay({ facts, outline }: { facts: string; outline: unknown }): Promise<void> {
  const opening = indexedDB.open('rollbook');
  await new Promise((done, refuse) => {
    opening.onsuccess = done;
    opening.onerror = refuse;
  });
  const tx = opening.result.transaction(['facts', 'days'], 'readwrite');
  for (const fact of JSON.parse(facts)) tx.objectStore('facts').put(fact);
  tx.objectStore('days').put(outline);
  await new Promise((done, refuse) => {
    tx.oncomplete = done;
    tx.onabort = refuse;
  });
  opening.result.close();
}

export const median = (values: readonly number[]): number => percentile(values, 50);

/** The value that so many in a hundred do not exceed. */
export function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil((share / 100) * sorted.length) - 1))]!;
}
