import { vi } from 'vitest';
import { type AppStore, appStore } from '../../../src/app/app-store.ts';
import { gettingCodes, haveCode } from '../../../src/app/exchange/getting.ts';
import { answerHave } from '../../../src/app/exchange/giving.ts';
import { takeUpArrival } from '../../../src/app/import/arrivals.ts';
import type { DayImport } from '../../../src/app/import/import-days.ts';
import type { HeldKeys } from '../../../src/app/key-ring.ts';
import { onlookerDays } from '../../../src/app/onlooker-days.ts';
import { safekeeping } from '../../../src/app/safekeeping.ts';
import type { Offer as Given } from '../../../src/app/sealed/offer.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { ok } from '../../../src/shared/result.ts';
import { memoryJournal } from '../../../src/storage/memory-journal.ts';
import { MORNING } from '../../day/say.ts';
import { memoryShelf } from '../../live/live-phone.ts';

export const DAY = 'day-1';

/** What a page has of the platform: locks that nobody else holds, and an address. */
export function asOnPage(): void {
  const request = (_: string, __: unknown, work: (lock: object) => unknown) => work({});
  vi.stubGlobal('navigator', { locks: { request } });
  vi.stubGlobal('location', { hash: '' });
  vi.stubGlobal('window', {});
}

/** A phone without a screen and without any server. */
export function sharedPhone(database: string, name: string) {
  const ring = new Map<string, HeldKeys>();
  const shelf = memoryShelf();
  const engine = {
    shelf,
    ring: {
      read: async (day: string) => ring.get(day),
      keep: async (day: string, held: HeldKeys) => void ring.set(day, held),
      find: async (wanted: string) => [...ring].find(([, { keys }]) => keys.name === wanted)?.[0],
    },
  };
  const app = appStore({
    journal: memoryJournal(database),
    clock: { now: () => ({ atMs: MORNING, zone: 120 }) },
    window: 'win01',
    neighbours: { tell: () => {}, listen: () => () => {} },
    newDayId: () => DAY,
    safekeeping: safekeeping(undefined),
    holder: { read: () => ({ name, job: 'Utility' }), keep: () => {} },
    onlooking: onlookerDays(undefined),
    live: {
      places: { of: () => undefined, keep: () => {} },
      engine: async () => engine,
      start: () => {},
      stop: () => {},
      forget: async () => {},
    },
  });
  return { app, ring, shelf, database };
}
export type SharedPhone = ReturnType<typeof sharedPhone>;

export async function say({ app }: SharedPhone, ...drafts: Draft[]): Promise<void> {
  const store = await app.open(DAY);
  for (const draft of drafts) if (!store.run(() => ok([draft])).ok) throw new Error('not said');
  await store.flushed();
}

export const factsOf = async ({ app }: SharedPhone) => (await app.open(DAY)).day.peek().facts;

/** What the reader's code makes the giver show. */
export async function offered(giver: SharedPhone, reader: SharedPhone): Promise<Given> {
  const offer = await answerHave(giver.app, DAY, await haveCode(reader.app, DAY));
  if (!offer?.ok) throw new Error(JSON.stringify(offer));
  return offer.value;
}

/** How many pictures were shown until all was read, every third of them lost. */
export async function filmed(offer: Given): Promise<{ pictures: number; finish: () => Promise<unknown> }> {
  const getting = gettingCodes();
  let number = 0;
  for (; !getting.isWhole; number += 1) if (number % 3 !== 2) getting.take(offer.series!.code(number));
  return { pictures: number, finish: () => getting.finish(DAY) };
}

/** The reader looks at what came, and imports it. */
export async function imported(reader: SharedPhone): Promise<DayImport> {
  const arrival = await takeUpArrival(reader.app);
  if (arrival.kind !== 'day-files') throw new Error(JSON.stringify(arrival));
  const done = await arrival.days.importAll();
  if (!done.ok) throw new Error(JSON.stringify(done.problem));
  return arrival.days;
}

/** From screen to camera: the reader's code, the giver's codes, and the import. */
export async function byCodes(giver: SharedPhone, reader: SharedPhone): Promise<DayImport | null> {
  const offer = await offered(giver, reader);
  if (!offer.series) return null;
  await (await filmed(offer)).finish();
  return imported(reader);
}

export type { AppStore };
