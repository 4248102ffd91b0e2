// An action goes to the copy and to the database at the same time, and a kill between the two leaves it in one of them.
// Aligning them makes both say the same of a day again. A day at rest has one file, whose name says which database it was
// compared with; whatever was said since stands in other files, so that a look at the names tells whether there is
// anything to compare.

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

/** A window that the system has put to sleep may hold its turn; then the day stays as it is until the next start. */
const TURN_WITHIN_MS = 1000;

/** Windows that align at the same time would each take away what the other one counts on. */
const inTurn = <T>(work: () => Promise<T>): Promise<T> =>
  navigator.locks.request('rollbook-copies', { signal: AbortSignal.timeout(TURN_WITHIN_MS) }, work);

/** Which filling of the database this window began with: one that was lost or emptied since has nothing at rest. */
let filling: unknown;

/**
 * Writes into the copy of a day what only the database has, and gives what only the copy has: that is the window's to put
 * back, and until it is there the day does not count as aligned. A copied fact that fits its check is whole, and what the
 * database says else under its id is damaged; one without a check stands back behind the database.
 */
export const align = (folder: string): Promise<OnlyCopied> =>
  inTurn(async () => {
    const day = await (await copies()).getDirectoryHandle(folder);
    const files = await filesIn(day);
    filling ??= await inDatabase((db) => db.get('meta', FILLING));
    // A file that was written before there were checks does not begin so, and is written anew.
    const atRest = `whole-${filling}-checked-`;
    if (files.length === 1 && files.every(({ name }) => name.startsWith(atRest))) return NOTHING_COPIED;
    // In this order: what another window says meanwhile is missing in the copy here, where a second line does no harm.
    const copied = readCopies(await textOf(files));
    const { stored, unsure } = await storedOf(folder);
    const { missing: whole, extra } = compareStored(copied.whole, stored);
    const kept = new Set(stored.map(({ id }) => id));
    const unchecked = copied.unchecked.filter(({ id }) => !kept.has(id));
    const damaged = copied.changed.filter((id) => !kept.has(id)).length;
    // The day may have been erased meanwhile, the copy first: throws then.
    await (await copies()).getDirectoryHandle(folder);
    // Never in place of a file that is there: a kill in the middle would leave neither.
    const fresh = `${crypto.randomUUID()}.txt`;
    if (whole.length + unchecked.length > 0) {
      await writeNew(day, fresh, extra, unsure);
    } else if (await writeNew(day, atRest + fresh, [...copied.whole, ...extra], unsure)) {
      // What another window writes in is its own, and stays.
      for (const { name } of files) await day.removeEntry(name).catch(() => {});
    }
    return { whole, unchecked, damaged };
  });

/** True when the disk has them, so that what they take the place of can go; without facts no file is made. */
async function writeNew(
  day: FileSystemDirectoryHandle,
  name: string,
  facts: readonly Envelope[],
  unsure: ReadonlySet<FactId>,
): Promise<boolean> {
  if (facts.length === 0) return false;
  const file = await openFile(day, name);
  try {
    // A line for each, so that a damaged one costs no other.
    writeAtEnd(file, facts.flatMap((fact) => linesOf([fact], unsure).map(([, line]) => line)).join(''));
    file.flush();
  } finally {
    file.close();
  }
  return true;
}

interface StoredDay {
  readonly stored: readonly Envelope[];
  /** Those that came in from a damaged file without checks. */
  readonly unsure: ReadonlySet<FactId>;
}

/** What is stored of a day and can be read. */
const storedOf = (folder: string): Promise<StoredDay> =>
  inDatabase(async (db) => {
    const day = dayOf(folder);
    const stored: unknown[] = await db.getAll('facts', dayRange(day));
    const outline: DayOutline | undefined = await db.get('days', day);
    return { stored: stored.filter(isReadable), unsure: new Set(outline?.unsure) };
  });

/** Reads the database, and makes none where there is none: rejects. */
async function inDatabase<T>(read: (db: IDBPDatabase) => Promise<T>): Promise<T> {
  const db = await openDB(DATABASE, undefined, { upgrade: (_db, _from, _to, tx) => tx.abort() });
  try {
    return await read(db);
  } finally {
    db.close();
  }
}
