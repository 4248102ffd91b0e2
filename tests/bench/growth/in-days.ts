import { generateSeason } from '../../../sample-days/generate.ts';
import { median, pathOf, phoneWith, SLOWDOWN, usableAt } from '../phone.ts';
import type { Growth, Series } from './series.ts';

const SIZES = [15, 30, 60, 120, 240];
const RUNS = 3;
const BYTES_PER_MB = 1e6;

/** Seasons on one phone: how long the last day takes to open, the list of days to be read, and what the database takes. */
export async function growthInDays(): Promise<Growth> {
  const opening: Series['points'][number][] = [];
  const listing: Series['points'][number][] = [];
  const stored: Series['points'][number][] = [];
  for (const days of SIZES) {
    const season = generateSeason({ seed: 9, days, takes: 60, tracks: 16, performers: 12 });
    const stage = await phoneWith(season, { path: pathOf(`season-${days}`) });
    await stage.setSlowdown(SLOWDOWN);
    const opened: number[] = [];
    for (let run = 0; run < RUNS; run += 1) {
      await stage.relaunch();
      opened.push(await usableAt(stage.page));
    }
    await stage.setSlowdown(1);
    const { list, bytes } = await stage.page.evaluate(readSeason);
    await stage.close();
    opening.push({ size: days, cost: median(opened) });
    listing.push({ size: days, cost: median(list) });
    stored.push({ size: days, cost: bytes / BYTES_PER_MB });
  }
  return {
    of: 'days on the phone',
    with: '60 takes a day, in Chromium',
    series: [
      { work: `opening the last of them, at ${SLOWDOWN}x`, unit: 'ms', points: opening },
      { work: 'reading the list of days', unit: 'ms', points: listing },
      { work: 'what they take on the phone', unit: 'MB', points: stored },
    ],
  };
}

async function readSeason(): Promise<{ list: number[]; bytes: number }> {
  const opening = indexedDB.open('rollbook');
  await new Promise((done) => {
    opening.onsuccess = done;
  });
  const list: number[] = [];
  for (let run = 0; run < 9; run += 1) {
    const from = performance.now();
    const asked = opening.result.transaction('days').objectStore('days').getAll();
    await new Promise((done) => {
      asked.onsuccess = done;
    });
    list.push(performance.now() - from);
  }
  opening.result.close();
  const { usageDetails, usage = 0 } = (await navigator.storage.estimate()) as StorageEstimate & {
    usageDetails?: { indexedDB?: number };
  };
  return { list, bytes: usageDetails?.indexedDB ?? usage };
}
