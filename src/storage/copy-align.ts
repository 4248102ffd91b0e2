// An action is written to the copy and the database at the same time, and if the app is killed one of them
// may miss it. Aligning makes the two agree. An aligned day has one file, named after the database it was
// compared with; later facts go to other files, so the file names alone tell whether there is anything to
// compare.

import { type IDBPDatabase, openDB } from 'idb';
import type { DayOutline } from '../app/ports.ts';
import type { OnlyCopied } from '../app/restore.ts';
import { isReadable } from '../facts/fact.ts';
import type { Envelope } from '../facts/kinds/envelope.ts';
import { compareStored } from '../facts/stored.ts';
import type { FactId } from '../shared/ids.ts';
import { dayOf, NOTHING_COPIED } from './copy-asked.ts';
import { copies, filesIn, openFile, textOf, writeAtEnd } from './copy-files.ts';
import { linesOf, readCopies } from './copy-lines.ts';
import { DATABASE, dayRange, FILLING } from './database.ts';

/** A suspended window may hold the lock; then the day is left until the next start. */
const TURN_WITHIN_MS = 1000;

/** Windows that align at the same time would remove what the other relies on. */
const inTurn = <T>(work: () => Promise<T>): Promise<T> =>
  navigator.locks.request('rollbook-copies', { signal: AbortSignal.timeout(TURN_WITHIN_MS) }, work);

/** The database's filling id when this window started; after a loss nothing counts as aligned. */
let filling: unknown;

/**
 * Copies what only the database has of a day and returns what only the copy has. The window puts that back;
 * until then the day is not aligned. A checked copy beats a differing fact in the database; an unchecked copy
 * does not.
 */
export const align = (folder: string): Promise<OnlyCopied> =>
  inTurn(async () => {
    const day = await (await copies()).getDirectoryHandle(folder);
    const files = await filesIn(day);
    filling ??= await inDatabase((db) => db.get('meta', FILLING));
    // A file from before there were checks has another name, so it is rewritten.
    const atRest = `whole-${filling}-checked-`;
    if (files.length === 1 && files.every(({ name }) => name.startsWith(atRest))) return NOTHING_COPIED;
    // In this order: whatever another window writes in between is then missing from the copy, where writing
    // it twice does no harm.
    const copied = readCopies(await textOf(files));
    const { stored, unsure } = await storedOf(folder);
    const { missing: whole, extra } = compareStored(copied.whole, stored);
    const kept = new Set(stored.map(({ id }) => id));
    const unchecked = copied.unchecked.filter(({ id }) => !kept.has(id));
    const damaged = copied.changed.filter((id) => !kept.has(id)).length;
    // Throws if the day was erased meanwhile, the copy first.
    await (await copies()).getDirectoryHandle(folder);
    // Never overwrites: a kill halfway would leave neither file.
    const fresh = `${crypto.randomUUID()}.txt`;
    if (whole.length + unchecked.length > 0) {
      await writeNew(day, fresh, extra, unsure);
    } else if (await writeNew(day, atRest + fresh, [...copied.whole, ...extra], unsure)) {
      // Files in use by another window stay.
      for (const { name } of files) await day.removeEntry(name).catch(() => {});
    }
    return { whole, unchecked, damaged };
  });

/** True once they are on the disk and may replace others; creates no file without facts. */
async function writeNew(
  day: FileSystemDirectoryHandle,
  name: string,
  facts: readonly Envelope[],
  unsure: ReadonlySet<FactId>,
): Promise<boolean> {
  if (facts.length === 0) return false;
  const file = await openFile(day, name);
  try {
    // One line per fact, so that damage to one costs no other.
    writeAtEnd(file, facts.flatMap((fact) => linesOf([fact], unsure).map(([, line]) => line)).join(''));
    file.flush();
  } finally {
    file.close();
  }
  return true;
}

interface StoredDay {
  readonly stored: readonly Envelope[];
  /** Those imported without checks from a damaged file. */
  readonly unsure: ReadonlySet<FactId>;
}

/** The readable facts stored of a day. */
const storedOf = (folder: string): Promise<StoredDay> =>
  inDatabase(async (db) => {
    const day = dayOf(folder);
    const stored: unknown[] = await db.getAll('facts', dayRange(day));
    const outline: DayOutline | undefined = await db.get('days', day);
    return { stored: stored.filter(isReadable), unsure: new Set(outline?.unsure) };
  });

/** Reads the database; rejects rather than create one. */
async function inDatabase<T>(read: (db: IDBPDatabase) => Promise<T>): Promise<T> {
  const db = await openDB(DATABASE, undefined, { upgrade: (_db, _from, _to, tx) => tx.abort() });
  try {
    return await read(db);
  } finally {
    db.close();
  }
}
