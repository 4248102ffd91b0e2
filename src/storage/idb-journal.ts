import { type DBSchema, type IDBPDatabase, openDB, unwrap } from 'idb';
import { type DayOutline, FactIdTwice, type Journal } from '../app/ports.ts';
import { isReadable } from '../facts/fact.ts';
import type { Envelope } from '../facts/kinds/envelope.ts';
import { isSameFact } from '../facts/stored.ts';
import { DATABASE, dayRange, FILLING } from './database.ts';
import { quickAppend } from './quick-append.ts';

interface Shape extends DBSchema {
  /** Facts of all days; nothing that can be read is ever put over. */
  facts: { key: [day: string, id: string]; value: Envelope };
  /** What the list of days shows; can be made again from the facts. */
  days: { key: string; value: DayOutline };
  meta: { key: string; value: string };
}

const VERSION = 1;

interface Connection {
  readonly db: IDBPDatabase<Shape>;
  /** The word of its filling: no database can be emptied while somebody is connected to it. */
  readonly filling: string | undefined;
}

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
  let connection: Promise<Connection> | undefined;
  /** What `connection` has come to: work on it begins within the tap. */
  let opened: Connection | undefined;
  /** Which filling of the database each day was first read from. */
  const readFrom = new Map<string, string | undefined>();

  const open = async (): Promise<Connection> => {
    const db = await openDB<Shape>(DATABASE, VERSION, {
      upgrade(db, from) {
        if (from < 1) {
          db.createObjectStore('facts', { keyPath: ['day', 'id'] });
          db.createObjectStore('days', { keyPath: 'id' });
          void db.createObjectStore('meta').put(randomName(6), FILLING);
        }
      },
      blocked: events.onBlocked,
      blocking(_, wanted, event) {
        (event.target as IDBDatabase).close();
        // Without a wanted version the database is being deleted, as when somebody clears the site's data.
        if (wanted === null) letGo();
        else events.onSuperseded();
      },
      terminated: letGo,
    });
    return { db, filling: await db.get('meta', FILLING) };
  };

  const connect = (): Promise<Connection> => {
    connection ??= open();
    // An opening that failed is not the answer for ever.
    connection.then((made) => {
      opened = made;
    }, letGo);
    return connection;
  };

  const letGo = (): void => {
    connection = undefined;
    opened = undefined;
  };

  const withDatabase = async <T>(work: (connection: Connection) => Promise<T>): Promise<T> => {
    try {
      return await work(opened ?? (await connect()));
    } catch (error) {
      if (!isLostConnection(error)) throw error;
      letGo();
      return work(await connect());
    }
  };

  const { database, begun } = await withDatabase(readOrMakeName);

  return {
    state: { database, kept: true, begun },
    days: () => withDatabase(({ db }) => db.getAll('days')),
    read: (day) =>
      withDatabase(async ({ db, filling }) => {
        const facts = await db.getAll('facts', dayRange(day));
        if (!readFrom.has(day)) readFrom.set(day, filling);
        return facts;
      }),
    append: (facts, outline, held = () => facts) =>
      withDatabase(async ({ db, filling }) => {
        const isEmptied = readFrom.has(outline.id) && readFrom.get(outline.id) !== filling;
        const isKept = !isEmptied && (await quickAppend(unwrap(db), facts, outline));
        const back = isKept
          ? 0
          : await appendOnce(db, { facts, outline, back: isEmptied ? held() : [], database });
        readFrom.set(outline.id, filling);
        return back;
      }),
    mend: (facts, outline) =>
      withDatabase(async ({ db }) => {
        const tx = db.transaction(['facts', 'days'], 'readwrite', { durability: 'strict' });
        const store = tx.objectStore('facts');
        await Promise.all([
          ...facts.map((fact) => store.put(fact)),
          tx.objectStore('days').put(outline),
          tx.done,
        ]);
      }),
    describe: (outline) =>
      withDatabase(async ({ db }) => {
        await db.put('days', outline);
      }),
    erase: (day) =>
      withDatabase(async ({ db }) => {
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

/** Six random characters, made with the database and gone with it, so that no id can ever name two facts. */
async function readOrMakeName({ db }: Connection): Promise<{ database: string; begun: boolean }> {
  // Every start but the first: nothing is written, so nothing waits for the disk.
  const made = await db.get('meta', 'database');
  if (made) return { database: made, begun: false };
  const tx = db.transaction('meta', 'readwrite', { durability: 'strict' });
  const known = await tx.store.get('database');
  const name = known ?? randomName(6);
  if (!known) await tx.store.put(name, 'database');
  await tx.done;
  return { database: name, begun: !known };
}

/** Characters from the platform's randomness: `randomName(6)` is `'k3f9x2'`. */
export function randomName(length: number): string {
  const bytes = crypto.getRandomValues(new Uint8Array(length));
  return Array.from(bytes, (byte) => (byte % 36).toString(36)).join('');
}

interface Append {
  readonly facts: readonly Envelope[];
  readonly outline: DayOutline;
  /** What the window holds of a day whose database was emptied since. */
  readonly back: readonly Envelope[];
  readonly database: string;
}

/**
 * The careful way, for facts that may be known and a database that may be new: one strict transaction, all facts or
 * none, and done only when the disk has them. Gives how many facts came back.
 */
async function appendOnce(db: IDBPDatabase<Shape>, append: Append): Promise<number> {
  const { facts, outline, back, database } = append;
  const tx = db.transaction(['facts', 'days', 'meta'], 'readwrite', { durability: 'strict' });
  const meta = tx.objectStore('meta');
  const done = tx.done;
  try {
    const fresh = await freshOf(tx.objectStore('facts'), [...back, ...facts]);
    if (!(await meta.get('database'))) await meta.put(database, 'database');
    await Promise.all([
      ...fresh.map(({ fact, overDamage }) =>
        overDamage ? tx.objectStore('facts').put(fact) : tx.objectStore('facts').add(fact),
      ),
      tx.objectStore('days').put(outline),
    ]);
    await done;
    const said = new Set(facts.map(({ id }) => id));
    return fresh.filter(({ fact }) => !said.has(fact.id)).length;
  } catch (error) {
    done.catch(() => {});
    if (!tx.error) abort(tx);
    throw tx.error ?? error;
  }
}

/** A transaction that has ended by itself cannot be aborted, and need not be. */
function abort(tx: { abort(): void }): void {
  try {
    tx.abort();
  } catch {}
}

interface Fresh {
  readonly fact: Envelope;
  /** What is stored under its id cannot be read and makes room. */
  readonly overDamage: boolean;
}

interface FactStore {
  get(key: [string, string]): Promise<Envelope | undefined>;
}

/**
 * The facts that are not stored yet, each once; throws where a known id comes with another body. What is stored and
 * cannot be read counts as not stored: a day file may bring the whole fact back.
 */
async function freshOf(store: FactStore, facts: readonly Envelope[]): Promise<Fresh[]> {
  const once = [...new Map(facts.map((fact) => [fact.id, fact])).values()];
  const known = await Promise.all(once.map(({ day, id }) => store.get([day, id])));
  const readable = known.map((stored) => (stored && isReadable(stored) ? stored : undefined));
  const twice = once.find((fact, at) => readable[at] && !isSameFact(readable[at], fact));
  if (twice) throw new FactIdTwice(twice.id);
  return once.flatMap((fact, at) => (readable[at] ? [] : [{ fact, overDamage: known[at] !== undefined }]));
}
