import { type DBSchema, openDB } from 'idb';
import type { HeldKeys, KeyRing } from '../app/key-ring.ts';
import type { KeptBatch, ReadUpTo, Shelf } from '../app/shelf.ts';

interface Shape extends DBSchema {
  /** By day, writer and number. */
  batches: { key: [string, string, number]; value: KeptBatch };
  /** By day. */
  upTo: { key: string; value: ReadUpTo };
  /** By day. The private half of a key is the platform's, which hands it to nobody. */
  keys: { key: string; value: HeldKeys };
}

const DATABASE = 'rollbook-live';

const dayRange = (day: string): IDBKeyRange => IDBKeyRange.bound([day], [day, []]);

/** A database of its own: no upgrade of the journal waits for it, and nothing in it is needed to open a day. */
export function idbShelf(): Shelf & { readonly ring: KeyRing } {
  const open = () =>
    openDB<Shape>(DATABASE, 1, {
      upgrade(db) {
        db.createObjectStore('batches');
        db.createObjectStore('upTo');
        db.createObjectStore('keys');
      },
      blocking: (_, __, event) => (event.target as IDBDatabase).close(),
    });
  let opened: ReturnType<typeof open> | undefined;
  /** Opened anew after the browser closed it. */
  const using = async <Result>(work: (db: Awaited<ReturnType<typeof open>>) => Promise<Result>) => {
    opened ??= open();
    try {
      return await work(await opened);
    } catch (error) {
      opened = undefined;
      throw error;
    }
  };
  return {
    ring: {
      read: (day) => using((db) => db.get('keys', day)),
      keep: (day, held) => using(async (db) => void (await db.put('keys', held, day))),
      find: (name) =>
        using(async (db) => {
          const [days, held] = await Promise.all([db.getAllKeys('keys'), db.getAll('keys')]);
          return days[held.findIndex(({ keys }) => keys.name === name)];
        }),
    },
    read: (day) =>
      using(async (db) => ({
        batches: await db.getAll('batches', dayRange(day)),
        upTo: (await db.get('upTo', day)) ?? {},
      })),
    keep: (day, batches, upTo) =>
      using(async (db) => {
        const writing = db.transaction(['batches', 'upTo'], 'readwrite', { durability: 'strict' });
        const kept = batches.map((batch) =>
          writing.objectStore('batches').put(batch, [day, batch.writer, batch.number]),
        );
        await Promise.all([...kept, writing.objectStore('upTo').put(upTo, day), writing.done]);
      }),
    drop: (day, batches) =>
      using(async (db) => {
        const writing = db.transaction('batches', 'readwrite', { durability: 'strict' });
        const gone = batches.map(({ writer, number }) => writing.store.delete([day, writer, number]));
        await Promise.all([...gone, writing.done]);
      }),
    forget: (day) =>
      using(async (db) => {
        const writing = db.transaction(['batches', 'upTo', 'keys'], 'readwrite');
        await Promise.all([
          writing.objectStore('batches').delete(dayRange(day)),
          writing.objectStore('upTo').delete(day),
          writing.objectStore('keys').delete(day),
          writing.done,
        ]);
      }),
  };
}
