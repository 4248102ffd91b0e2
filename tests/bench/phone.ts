import type { Page } from 'playwright-core';
import { ensureBuilt } from '../../.ci/build.mjs';
import { type DaySize, type GeneratedDay, generateDay } from '../../sample-days/generate.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { openStage, type Stage, type StageOptions } from '../browser/harness.ts';

/** How many times slower than this machine the slow phone is. */
export const SLOWDOWN = 6;

export const DAY = 'generated';
const DAY_SIZE: DaySize = { seed: 9, takes: 200, tracks: 16, performers: 12, day: DAY };
export const dayOfTakes = (takes: number): GeneratedDay => generateDay({ ...DAY_SIZE, takes });
/** On one recorder with as many tracks as the two below have together. */
export const dayOfOneRecorder = (takes: number): GeneratedDay =>
  generateDay({ ...DAY_SIZE, takes, tracks: 64, performers: 48 });
/** On two recorders of 32 tracks each, which both get everybody. */
export const dayOfTwoRecorders = (takes: number): GeneratedDay =>
  generateDay({ ...DAY_SIZE, takes, tracks: 32, performers: 24, isTwice: true });

export const pathOf = (day: string): string => `/#/day/${day}/now`;

declare global {
  /** Notes that what was looked for stands in the next picture. */
  var nowUsable: () => void;
  /** The ms since the page was asked for at which it was painted. */
  var usableMs: number | undefined;
  /** On the spreadsheet's page: puts rows into its database, and gives every cell that it holds, line by line. */
  var keepRows: (rows: readonly (readonly string[])[]) => Promise<void>;
  var cells: () => string[][];
}

/** Runs before the page's own scripts, as do the two below, which call it. */
function noteUsable(): void {
  globalThis.nowUsable = () =>
    requestAnimationFrame(() => {
      setTimeout(() => {
        globalThis.usableMs ??= performance.now();
      });
    });
}

/** Waits for an element in the page. */
function watchFor(wanted: string): void {
  const look = new MutationObserver(() => {
    if (!document.querySelector(wanted)) return;
    look.disconnect();
    globalThis.nowUsable();
  });
  look.observe(document, { childList: true, subtree: true });
}

/** Waits for a text on a canvas. The canvas alone is there long before, and empty. */
function watchForDrawn(wanted: string): void {
  const { fillText } = CanvasRenderingContext2D.prototype;
  CanvasRenderingContext2D.prototype.fillText = function (text, ...where) {
    fillText.call(this, text, ...where);
    if (text === wanted) globalThis.nowUsable();
  };
}

const beforePage = (watch: (wanted: string) => void, wanted: string): (() => void) =>
  new Function(`(${noteUsable})();(${watch})(${JSON.stringify(wanted)})`) as () => void;

/** Long enough for most starts; the moment itself is noted by the page. Looking earlier would slow the page down. */
const LOOK_AFTER_MS = 3000;

export async function usableAt(page: Page): Promise<number> {
  for (let look = 1; look <= 3; look += 1) {
    await page.waitForTimeout(LOOK_AFTER_MS);
    const at = await page.evaluate(() => globalThis.usableMs);
    if (at !== undefined) return at;
  }
  throw new Error(`Not usable ${3 * LOOK_AFTER_MS} ms after its start`);
}

/** A day is usable when it says who is on which track and what Roll will log. */
export const USABLE = '.page:has(.rows .row):has(.roll) [data-unsaved="0"]';

/** The app on a phone with these days on it, opened at the first of them; the server is dead. */
export async function phoneWith(
  days: Iterable<GeneratedDay>,
  options: Pick<StageOptions, 'path' | 'fineClock'> = {},
): Promise<Stage> {
  ensureBuilt();
  const stage = await openStage({
    path: pathOf(DAY),
    before: beforePage(watchFor, USABLE),
    untouched: true,
    worker: true,
    ...options,
  });
  await stage.waitOfflineReady();
  for (const day of days) await keep(stage.page, day);
  await stage.killServer();
  return stage;
}

/**
 * The spreadsheet on such a phone, with these rows in its database; the server is dead here too. It is usable when the
 * first cell of the second row is drawn: the first is the head.
 */
export async function spreadsheetWith(rows: readonly (readonly string[])[], folder: string): Promise<Stage> {
  const before = beforePage(watchForDrawn, rows[1]![0]!);
  const stage = await openStage({ folder, before, untouched: true, worker: true });
  await stage.waitOfflineReady();
  await stage.page.evaluate((given) => globalThis.keepRows(given), rows);
  await stage.killServer();
  return stage;
}

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
