import type { DayId } from '../../facts/kinds/envelope.ts';
import type { AppStore } from '../app-store.ts';
import type { HeldKeys } from '../key-ring.ts';
import { BatchBook } from '../live/book.ts';
import { type DayFacts, dayFacts } from '../live/day-facts.ts';
import { lockOf, stopLive } from '../live/go-live.ts';
import { platformParts } from '../live/platform-parts.ts';
import { sealedSealer } from '../live/sealed-sealer.ts';
import type { Sealer } from '../live/sealer.ts';

/** A shared day's batches, and the door for more. */
export interface SharedWork {
  readonly held: HeldKeys;
  readonly sealer: Sealer;
  readonly book: BatchBook;
  readonly facts: DayFacts;
}

/**
 * Works on the batches of a day while nothing else of this phone does; a live day goes on afterwards. Null on a day
 * that this phone has no keys of; `busy` where another window keeps it live.
 */
export async function besideLive<Done>(
  app: AppStore,
  day: DayId,
  work: (shared: SharedWork) => Promise<Done>,
): Promise<{ readonly done: Done } | 'busy' | null> {
  const { live } = app.parts;
  const engine = await live?.engine();
  const held = await engine?.ring.read(day);
  if (!live || !engine || !held) return null;
  const store = await app.open(day);
  await stopLive();
  try {
    return await navigator.locks.request(lockOf(day), { ifAvailable: true }, async (lock) => {
      if (!lock) return 'busy';
      const book = await BatchBook.open(engine.shelf, day);
      const { database } = app.parts.journal.state;
      const sealer = await sealedSealer(platformParts, held, store, database, book);
      return { done: await work({ held, sealer, book, facts: dayFacts(app, store) }) };
    });
  } finally {
    live.start(day);
  }
}
