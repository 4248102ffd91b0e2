import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { type DayOutline, FactIdTwice, type Journal } from '../app/ports.ts';
import type { Envelope } from '../facts/envelope.ts';
import { isSameFact } from '../facts/stored.ts';

interface Shape extends DBSchema {
  /** Facts of all days; nothing here is ever put over. */
  facts: { key: [day: string, id: string]; value: Envelope };
  /** What the list of days shows; can be made again from the facts. */
  days: { key: string; value: DayOutline };
  meta: { key: string; value: string };
}

const NAME = 'rollbook';
const VERSION = 1;

export interface OpenEvents {
  /** Another window holds an older database open; this one waits. */
  readonly onBlocked: () => void;
  /** A newer window needs the database: this one lets go and must be loaded again to write. */
  readonly onSuperseded: () => void;
}

/**
 * Opens the phone's journal. Rejects where the browser refuses a database. A connection that the browser drops (a
 * phone does so in the background) is opened again and the work tried once more under the same ids.
 */
export async function openIdbJournal(events: OpenEvents): Promise<Journal> {
  let connection: IDBPDatabase<Shape> | undefined;

  const connect = async (): Promise<IDBPDatabase<Shape>> => {
    connection ??= await openDB<Shape>(NAME, VERSION, {
      upgrade(db, from) {
        if (from < 1) {
          db.createObjectStore('facts', { keyPath: ['day', 'id'] });
          db.createObjectStore('days', { keyPath: 'id' });
          db.createObjectStore('meta');
        }
      },
      blocked: events.onBlocked,
      blocking() {
        connection?.close();
        events.onSuperseded();
      },
      terminated() {
        connection = undefined;
      },
    });
    return connection;
  };

  const withDatabase = async <T>(work: (db: IDBPDatabase<Shape>) => Promise<T>): Promise<T> => {
    try {
      return await work(await connect());
    } catch (error) {
      if (!isLostConnection(error)) throw error;
      connection = undefined;
      return work(await connect());
    }
  };

  const database = await withDatabase(readOrMakeName);
  return {
    state: { database, kept: true },
    days: () => withDatabase((db) => db.getAll('days')),
    read: (day) => withDatabase((db) => db.getAll('facts', dayRange(day))),
    append: (facts, outline) => withDatabase((db) => appendOnce(db, facts, outline)),
    describe: (outline) =>
      withDatabase(async (db) => {
        await db.put('days', outline);
      }),
    erase: (day) =>
      withDatabase(async (db) => {
        const tx = db.transaction(['facts', 'days'], 'readwrite', { durability: 'strict' });
        await Promise.all([
          tx.objectStore('facts').delete(dayRange(day)),
          tx.objectStore('days').delete(day),
          tx.done,
        ]);
      }),
  };
}

const isLostConnection = (error: unknown): boolean =>
  error instanceof DOMException && (error.name === 'InvalidStateError' || error.name === 'UnknownError');

const dayRange = (day: string): IDBKeyRange => IDBKeyRange.bound([day], [day, []]);

/** Six random characters, made with the database and gone with it, so that no id can ever name two facts. */
async function readOrMakeName(db: IDBPDatabase<Shape>): Promise<string> {
  const tx = db.transaction('meta', 'readwrite', { durability: 'strict' });
  const known = await tx.store.get('database');
  const name = known ?? randomName(6);
  if (!known) await tx.store.put(name, 'database');
  await tx.done;
  return name;
}

/** Characters from the platform's randomness: `randomName(6)` is `'k3f9x2'`. */
export function randomName(length: number): string {
  const bytes = crypto.getRandomValues(new Uint8Array(length));
  return Array.from(bytes, (byte) => (byte % 36).toString(36)).join('');
}

/** One strict transaction: all facts or none, and done only when the disk has them. */
async function appendOnce(
  db: IDBPDatabase<Shape>,
  facts: readonly Envelope[],
  outline: DayOutline,
): Promise<void> {
  const tx = db.transaction(['facts', 'days'], 'readwrite', { durability: 'strict' });
  const store = tx.objectStore('facts');
  const done = tx.done;
  try {
    const known = await Promise.all(facts.map(({ day, id }) => store.get([day, id])));
    const twice = facts.find((fact, at) => known[at] && !isSameFact(known[at], fact));
    if (twice) throw new FactIdTwice(twice.id);
    const fresh = facts.filter((_, at) => !known[at]);
    await Promise.all([...fresh.map((fact) => store.add(fact)), tx.objectStore('days').put(outline)]);
  } catch (error) {
    done.catch(() => {});
    if (!tx.error) tx.abort();
    throw tx.error ?? error;
  }
  await done;
}
