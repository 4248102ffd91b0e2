import { type DBSchema, openDB } from 'idb';
import type { CardStore } from '../app/ports.ts';

interface Shape extends DBSchema {
  /** What was read of the cards of a day, by the day. */
  cards: { key: string; value: unknown };
}

const DATABASE = 'rollbook-cards';

/**
 * A database of its own, so that what can be read again never stands in the way of the journal: no upgrade of
 * the one waits for the other.
 */
export function idbCards(): CardStore {
  const open = () =>
    openDB<Shape>(DATABASE, 1, {
      upgrade(db) {
        db.createObjectStore('cards');
      },
      blocking: (_, __, event) => (event.target as IDBDatabase).close(),
    });
  const using = async <Result>(work: (db: Awaited<ReturnType<typeof open>>) => Promise<Result>) => {
    const db = await open();
    try {
      return await work(db);
    } finally {
      db.close();
    }
  };
  return {
    read: (day) => using((db) => db.get('cards', day)),
    keep: (day, read) => using(async (db) => void (await db.put('cards', read, day))),
    forget: (day) => using((db) => db.delete('cards', day)),
  };
}
