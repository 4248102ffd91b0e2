import { type DBSchema, type IDBPDatabase, openDB, unwrap } from 'idb';
import { type DayOutline, FactIdTwice, type Journal } from '../app/ports.ts';
import { isReadable } from '../facts/fact.ts';
import type { Envelope } from '../facts/kinds/envelope.ts';
import { isSameFact } from '../facts/stored.ts';
import { DATABASE, dayRange, FILLING } from './database.ts';
import { quickAppend } from './quick-append.ts';

interface Shape extends DBSchema {
  /** Facts of all days; readable ones are never overwritten. */
  facts: { key: [day: string, id: string]; value: Envelope };
  /** What the list of days shows; can be rebuilt from the facts. */
  days: { key: string; value: DayOutline };
  meta: { key: string; value: string };
}

const VERSION = 1;

interface Connection {
  readonly db: IDBPDatabase<Shape>;
  /** The database's filling id; it cannot be emptied while somebody is connected. */
  readonly filling: string | undefined;
}

export interface OpenEvents {
  /** Another window holds an older database open, so this one waits. */
  readonly onBlocked: () => void;
  /** A newer window needs the database: this one lets go and must reload before it can write. */
  readonly onSuperseded: () => void;
}

/**
 * Opens the phone's journal. Rejects if the browser refuses a database. If the browser drops the connection
 * (phones do so in the background), it reconnects and retries once with the same ids.
 */
export async function openIdbJournal(events: OpenEvents): Promise<Journal> {
  let connection: Promise<Connection> | undefined;
  /** The settled `connection`, so that work on it starts within the tap. */
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
        // No wanted version means that the database is being deleted, as when the user clears the site's
        // data.
        if (wanted === null) letGo();
        else events.onSuperseded();
      },
      terminated: letGo,
    });
    return { db, filling: await db.get('meta', FILLING) };
  };

  const connect = (): Promise<Connection> => {
    connection ??= open();
    // A failed opening may be tried again.
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

/** Six random characters that live and die with the database, so that no id can ever name two facts. */
async function readOrMakeName({ db }: Connection): Promise<{ database: string; begun: boolean }> {
  // Every start but the first writes nothing, so nothing waits for the disk.
  const made = await db.get('meta', 'database');
  if (made) return { database: made, begun: false };
  const tx = db.transaction('meta', 'readwrite', { durability: 'strict' });
  const known = await tx.store.get('database');
  const name = known ?? randomName(6);
  if (!known) await tx.store.put(name, 'database');
  await tx.done;
  return { database: name, begun: !known };
}

/** Random characters: `randomName(6)` is `'k3f9x2'`. */
export function randomName(length: number): string {
  const bytes = crypto.getRandomValues(new Uint8Array(length));
  return Array.from(bytes, (byte) => (byte % 36).toString(36)).join('');
}

interface Append {
  readonly facts: readonly Envelope[];
  readonly outline: DayOutline;
  /** The window's facts, if the day's database was emptied since. */
  readonly back: readonly Envelope[];
  readonly database: string;
}

/**
 * The slow path, for facts that may be known and a database that may be new: one strict transaction, all or
 * none, done once the disk has them. Returns how many facts were written back.
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

/** Aborting a transaction that has already ended throws; that is harmless. */
function abort(tx: { abort(): void }): void {
  try {
    tx.abort();
  } catch {}
}

interface Fresh {
  readonly fact: Envelope;
  /** Unreadable facts under the same ids are overwritten. */
  readonly overDamage: boolean;
}

interface FactStore {
  get(key: [string, string]): Promise<Envelope | undefined>;
}

/**
 * The facts not stored yet, each once; throws if a known id comes with a different body. Unreadable stored
 * facts count as not stored: a day file may replace them.
 */
async function freshOf(store: FactStore, facts: readonly Envelope[]): Promise<Fresh[]> {
  const once = [...new Map(facts.map((fact) => [fact.id, fact])).values()];
  const known = await Promise.all(once.map(({ day, id }) => store.get([day, id])));
  const readable = known.map((stored) => (stored && isReadable(stored) ? stored : undefined));
  const twice = once.find((fact, at) => readable[at] && !isSameFact(readable[at], fact));
  if (twice) throw new FactIdTwice(twice.id);
  return once.flatMap((fact, at) => (readable[at] ? [] : [{ fact, overDamage: known[at] !== undefined }]));
}
