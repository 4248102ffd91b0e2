import type { Page } from 'playwright-core';
import type { GeneratedDay } from '../../../sample-days/generate.ts';
import type { Stage } from '../../browser/harness.ts';
import { dayOfTakes, median, percentile, phoneWith, SLOWDOWN } from '../phone.ts';
import type { Row } from '../row.ts';

const ROUNDS = 8;
/** Before and after a tap, so that one does not wait for the work of another. */
const QUIET_MS = 200;
const SAVES = { warm: 10, counted: 200 };

/** Interaction to Next Paint that counts as good (web.dev/inp). */
const GOOD_MS = 200;

type Timed = PerformanceEntry & { readonly interactionId: number };

/**
 * Collects how long each tap took to the next paint, which may show no more than that it was pressed; what takes less
 * than 16 ms the browser does not report.
 */
function watchTaps(): void {
  const slowest = new Map<number, number>();
  (window as { tapTimes?: Map<number, number> }).tapTimes = slowest;
  new PerformanceObserver((list) => {
    for (const { interactionId, duration } of list.getEntries() as Timed[])
      if (interactionId) slowest.set(interactionId, Math.max(duration, slowest.get(interactionId) ?? 0));
  }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);
}

const SHORTEST_MS = 16;

type Tap = (selector: string, text?: string) => Promise<void>;

/** The middle of the first element that this selects and that has the text, once it is in sight. */
function middleOf({ selector, text }: { selector: string; text: string }): { x: number; y: number } {
  const found = [...document.querySelectorAll(selector)].find((one) => one.textContent?.includes(text));
  if (!found) throw new Error(`Nothing to tap: ${selector} ${text}`);
  found.scrollIntoView({ block: 'nearest' });
  const { x, y, width, height } = found.getBoundingClientRect();
  return { x: x + width / 2, y: y + height / 2 };
}

/**
 * A finger that costs the page nothing: what is looked up is looked up before, and without the driver's locators, which
 * leave listeners for every touch in the page.
 */
async function fingerOn(page: Page): Promise<Tap> {
  const session = await page.context().newCDPSession(page);
  return async (selector, text = '') => {
    const point = await page.evaluate(middleOf, { selector, text });
    await page.waitForTimeout(QUIET_MS);
    await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [point] });
    await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await page.waitForTimeout(QUIET_MS);
  };
}

/** Every frequent action of a day, once round. */
async function aRound(page: Page, tap: Tap): Promise<void> {
  const noSheet = async (): Promise<void> => {
    for (let look = 0; await page.evaluate(() => document.querySelector('dialog') !== null); look += 1) {
      if (look > 250) throw new Error('A sheet stays open');
      await page.waitForTimeout(20);
    }
  };
  const closeSheet = async (): Promise<void> => {
    await tap('dialog .sheet-head button');
    await noSheet();
  };
  await tap('.roll');
  await tap('.roll.roll-open');
  await tap('.dock-last button', 'circle');
  await tap('.dock-slate .button');
  await tap('.dock-last button', 'note');
  await closeSheet();
  await tap('main button.row', 'P3');
  await tap('dialog .rows button.row');
  await noSheet();
  for (const name of ['Cast', 'Line']) await tap('.tabs a', name);
  await tap('.line-foot button');
  await tap('.line-row');
  await closeSheet();
  await tap('.tabs a', 'Now');
}

/** Taps of one round. */
const TAPS = 14;

async function tapsToPaint(stage: Stage): Promise<number[]> {
  const { page } = stage;
  const tap = await fingerOn(page);
  await aRound(page, tap);
  await page.evaluate(watchTaps);
  await stage.setSlowdown(SLOWDOWN);
  for (let round = 0; round < ROUNDS; round += 1) await aRound(page, tap);
  const times = await page.evaluate(() => [
    ...(window as { tapTimes?: Map<number, number> }).tapTimes!.values(),
  ]);
  await stage.setSlowdown(1);
  // Without the quick ones, which are not reported, the rest would look slower than they are.
  return [...times, ...Array.from({ length: Math.max(0, TAPS * ROUNDS - times.length) }, () => SHORTEST_MS)];
}

/** From the tap to the moment at which the head's number of unsaved actions is 0 again, and a bare put, in turn. */
async function tapsToSaved({ warm, counted }: typeof SAVES): Promise<{ saved: number[]; bare: number[] }> {
  if (!crossOriginIsolated) throw new Error('The clock of this page is too coarse for what takes a ms');
  const opening = indexedDB.open('bare', 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore('facts', { keyPath: ['day', 'id'] });
  await new Promise((done) => {
    opening.onsuccess = done;
  });
  const bare = async (number: number): Promise<number> => {
    const from = performance.now();
    const tx = opening.result.transaction('facts', 'readwrite', { durability: 'strict' });
    const fields = { circled: number % 2 === 0, noGood: false };
    const fact = {
      kind: 'take-described',
      v: 1,
      at: Date.now(),
      zone: 60,
      take: '000018-k3f9x2a7b2c',
      fields,
    };
    tx.objectStore('facts').put({ ...fact, day: 'generated', id: `00${number}-k3f9x2a7b2c` });
    await new Promise((done) => {
      tx.oncomplete = done;
    });
    return performance.now() - from;
  };
  const tap = (): Promise<number> => {
    let from = 0;
    const saved = new Promise<number>((done) => {
      const state = document.querySelector('[data-unsaved]')!;
      const look = new MutationObserver(() => {
        if (state.getAttribute('data-unsaved') !== '0') return;
        look.disconnect();
        done(performance.now() - from);
      });
      look.observe(state, { attributes: true, attributeFilter: ['data-unsaved'] });
    });
    const button = document.querySelector<HTMLElement>('.dock-last button')!;
    // What it takes to look is none of the tap's.
    from = performance.now();
    button.click();
    return saved;
  };
  const times = { saved: [] as number[], bare: [] as number[] };
  for (let number = 1; number <= warm + counted; number += 1) {
    const one = await tap();
    await new Promise((done) => setTimeout(done, 30));
    const other = await bare(1000 + number);
    await new Promise((done) => setTimeout(done, 30));
    if (number > warm) {
      times.saved.push(one);
      times.bare.push(other);
    }
  }
  return times;
}

export const rows = (): Promise<Row[]> => tapRows(dayOfTakes(200), '');

/** What taps cost on a day of 200 takes. */
export async function tapRows(day: GeneratedDay, words: string): Promise<Row[]> {
  const stage = await phoneWith([day], { fineClock: true });
  await stage.reload();
  await stage.page.locator('.roll').waitFor();
  const paint = await tapsToPaint(stage);
  const { saved, bare } = await stage.page.evaluate(tapsToSaved, SAVES);
  await stage.close();
  const painted = (share: number, budget: number): Row => ({
    work: `tap to next paint${words} at ${SLOWDOWN}x, ${paint.length} taps, of ${share} in 100`,
    ours: percentile(paint, share),
    unit: 'ms',
    other: { by: 'counted as good', value: GOOD_MS },
    budget,
  });
  return [
    painted(75, 50),
    painted(98, 100),
    {
      work: `tap to saved${words}, strict, median of ${SAVES.counted}`,
      ours: median(saved),
      unit: 'ms',
      other: { by: 'a bare put', value: median(bare) },
      ratioBudget: 1 / 3,
    },
    {
      work: `tap to saved${words}, strict, of 98 in 100 of ${SAVES.counted}`,
      ours: percentile(saved, 98),
      unit: 'ms',
      other: { by: 'a bare put', value: percentile(bare, 98) },
      budget: 16,
    },
  ];
}
