import { WebSocket } from 'ws';
import { appStore } from '../../src/app/app-store.ts';
import type { DayStore } from '../../src/app/day-store.ts';
import { BatchBook } from '../../src/app/live/book.ts';
import { dayFacts } from '../../src/app/live/day-facts.ts';
import { keepLive, type LiveDay } from '../../src/app/live/live-day.ts';
import type { LiveState } from '../../src/app/live/live-state.ts';
import type { LogPlace, OpenLog } from '../../src/app/live/log.ts';
import type { Sealer } from '../../src/app/live/sealer.ts';
import type { Journal } from '../../src/app/ports.ts';
import { safekeeping } from '../../src/app/safekeeping.ts';
import type { KeptBatch, Shelf } from '../../src/app/shelf.ts';
import { openLog } from '../../src/live/log.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { PASSWORDS } from './servers.ts';

globalThis.WebSocket ??= WebSocket as unknown as typeof globalThis.WebSocket;

export const DAY = 'day-live';
export const PHONE: LogPlace = { path: '/live', user: 'phone', password: PASSWORDS.HUB_PHONE };
export const ONLOOKER: LogPlace = { path: '/live', user: 'onlooker', password: PASSWORDS.HUB_ONLOOKER };

/** A shelf that outlives the phone's windows, as its disk does. */
export function memoryShelf(): Shelf & { readonly batches: Map<string, KeptBatch> } {
  const batches = new Map<string, KeptBatch>();
  let upTo = {};
  return {
    batches,
    read: async () => ({ batches: [...batches.values()], upTo }),
    async keep(_, more, read) {
      for (const batch of more) batches.set(`${batch.writer} ${batch.number}`, batch);
      upTo = { ...read };
    },
    async drop(_, gone) {
      for (const { writer, number } of gone) batches.delete(`${writer} ${number}`);
    },
    async forget() {
      batches.clear();
      upTo = {};
    },
  };
}

interface PhoneParts {
  /** Six characters. */
  readonly database: string;
  /** Made anew for each window. */
  readonly sealer: (book: BatchBook, store: DayStore) => Sealer | Promise<Sealer>;
  /** `day-live` unless told. */
  readonly day?: string;
  readonly place?: LogPlace;
}

/** A phone without a screen: the same core, a journal and a shelf in memory, and a real connection. */
export class LivePhone {
  readonly journal: Journal;
  readonly day: string;
  readonly shelf = memoryShelf();
  readonly states: LiveState[] = [];
  store!: DayStore;
  #live: LiveDay | undefined;
  #windows = 0;
  readonly #parts: PhoneParts;

  constructor(parts: PhoneParts) {
    this.#parts = parts;
    this.day = parts.day ?? DAY;
    this.journal = memoryJournal(parts.database);
  }

  /** Opens the day; `base` says which server answers under the page's address. */
  async open(base: () => string): Promise<void> {
    this.#windows += 1;
    const app = appStore({
      journal: this.journal,
      clock: { now: () => ({ atMs: Date.now(), zone: 120 }) },
      window: `win${String(this.#windows).padStart(2, '0')}`,
      neighbours: { tell: () => {}, listen: () => () => {} },
      newDayId: () => this.day,
      safekeeping: safekeeping(undefined),
    });
    this.store = await app.open(this.day);
    const book = await BatchBook.open(this.shelf, this.day);
    const open: OpenLog = (place, day) => openLog(base(), place, day);
    this.#live = keepLive({
      openLog: open,
      place: this.#parts.place ?? PHONE,
      sealer: await this.#parts.sealer(book, this.store),
      book,
      facts: dayFacts(app, this.store),
      tell: (state) => this.states.push(state),
      onKeyTwice: () => {},
    });
  }

  get state(): LiveState | undefined {
    return this.states.at(-1);
  }

  get isLive(): boolean {
    return this.state?.is === 'live';
  }

  retry(): void {
    this.#live?.retry();
  }

  async close(): Promise<void> {
    await this.#live?.close();
    this.#live = undefined;
    this.store.close();
  }
}
