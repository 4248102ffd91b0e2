import { expect } from 'vitest';
import type { AppStore } from '../../../src/app/app-store.ts';
import { type DayStore, openDayStore } from '../../../src/app/day-store.ts';
import type { HeldKeys, Offer } from '../../../src/app/key-ring.ts';
import { BatchBook } from '../../../src/app/live/book.ts';
import { keysToShare } from '../../../src/app/live/join.ts';
import { codeToJoin, type Request, readLiveCode } from '../../../src/app/live/phone-live.ts';
import { platformParts } from '../../../src/app/live/platform-parts.ts';
import { sealedSealer } from '../../../src/app/live/sealed-sealer.ts';
import { onlookerDays } from '../../../src/app/onlooker-days.ts';
import { readAll } from '../../../src/app/read-stored.ts';
import { memoryJournal } from '../../../src/storage/memory-journal.ts';
import { MORNING } from '../../day/say.ts';
import { memoryShelf } from '../../live/live-phone.ts';

export const DAY = 'day-1';
const PLACE = { path: '/live', user: 'phone', password: 'word' };

/** A phone with the day open, and all that a live day needs but a server. */
export async function phone(database: string, name: string) {
  const ring = new Map<string, HeldKeys>();
  const onlooking = onlookerDays(undefined);
  const parts = {
    journal: memoryJournal(database),
    clock: { now: () => ({ atMs: MORNING, zone: 120 }) },
    window: 'win01',
    neighbours: { tell: () => {}, listen: () => () => {} },
    holder: { read: () => ({ name, job: 'Utility' }), keep: () => {} },
    onlooking,
    live: {
      places: { of: () => PLACE, keep: () => {} },
      engine: async () => ({
        ring: {
          read: async (day: string) => ring.get(day),
          keep: async (day: string, held: HeldKeys) => void ring.set(day, held),
          find: async () => DAY,
        },
        shelf: memoryShelf(),
      }),
      start: () => {},
      stop: () => {},
      forget: async () => {},
    },
  };
  const store = await openDayStore(DAY, parts);
  const app = { parts, open: async () => store } as unknown as AppStore;
  return { app, store, ring, onlooking };
}

/** What one phone has goes to the other, as a server or a file would carry it. */
export function give({ day: { value: from } }: DayStore, to: DayStore): void {
  const here = new Set(to.day.value.facts.map(({ id }) => id));
  const fresh = from.facts.filter(({ id }) => !here.has(id));
  to.addForeign(readAll(fresh).facts, fresh);
}

export async function shared(offer: Offer) {
  const [mixer, boom] = [await phone('phonea', 'Mira Holm'), await phone('phoneb', 'Jon Berg')];
  const { ring } = await mixer.app.parts.live!.engine();
  await keysToShare(platformParts, ring, mixer.app, mixer.store);
  const code = await codeToJoin(mixer.app, DAY, offer);
  expect(await readLiveCode(boom.app, null, code)).toEqual({
    ok: true,
    value: { did: 'joined', day: DAY, offer, isLive: true },
  });
  give(mixer.store, boom.store);
  return { mixer, boom, code };
}

export async function asked({ app }: { app: AppStore }, code: string): Promise<Request> {
  const read = await readLiveCode(app, DAY, code);
  if (!read?.ok || read.value.did !== 'asked') throw new Error(JSON.stringify(read));
  return read.value.request;
}

/** The sealer of a phone that has not sealed anything yet. */
export async function sealerOf({ ring, store, app }: Awaited<ReturnType<typeof phone>>) {
  const shelf = {
    read: async () => ({ batches: [], upTo: {} }),
    keep: async () => {},
    drop: async () => {},
    forget: async () => {},
  };
  const book = await BatchBook.open(shelf, DAY);
  return sealedSealer(platformParts, ring.get(DAY)!, store, app.parts.journal.state.database, book);
}
