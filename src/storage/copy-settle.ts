// An action goes to the copy and to the database at the same time, and a kill between the two leaves it in one of them.
// Settling makes both say the same of a day again. A day at rest has one file, which begins with `whole-`; whatever was
// said since stands in other files, so that a look at the names tells whether there is anything to compare.

import { openDB } from 'idb';
import type { Envelope } from '../facts/envelope.ts';
import { dayOf } from './copy-asked.ts';
import { copies, filesIn, openFile, textOf, writeAtEnd } from './copy-files.ts';
import { compare, linesOf, readLines } from './copy-lines.ts';
import { DATABASE, dayRange } from './database.ts';

const WHOLE = 'whole-';
const isWhole = ({ name }: FileSystemFileHandle): boolean => name.startsWith(WHOLE);

/** Windows that settle at the same time would each take away what the other one counts on. */
const inTurn = <T>(work: () => Promise<T>): Promise<T> => navigator.locks.request('rollbook-copies', work);

/**
 * Writes into the copy of a day what only the database has, and gives what only the copy has: that is the window's to put
 * back, and until it is there the day does not count as settled. `fresh` is a name that no file has had.
 */
export const settle = (folder: string, fresh: string): Promise<readonly Envelope[]> =>
  inTurn(async () => {
    const day = await (await copies()).getDirectoryHandle(folder);
    const files = await filesIn(day);
    if (files.length === 1 && files.every(isWhole)) return [];
    // In this order: what another window says meanwhile is missing in the copy here, where a second line does no harm.
    const copied = readLines(await textOf(files));
    const { onlyStored, onlyCopied } = compare(copied, await storedOf(dayOf(folder)));
    // The day may have been erased meanwhile, the copy first: throws then.
    await (await copies()).getDirectoryHandle(folder);
    if (onlyCopied.length > 0) {
      await writeNew(day, fresh, onlyStored);
      return onlyCopied;
    }
    await writeNew(day, `${WHOLE}${fresh}`, [...copied, ...onlyStored]);
    // What another window writes in is its own, and stays.
    for (const { name } of files) await day.removeEntry(name).catch(() => {});
    return [];
  });

/** Done when the disk has it: what it takes the place of is removed next. */
async function writeNew(
  day: FileSystemDirectoryHandle,
  name: string,
  facts: readonly Envelope[],
): Promise<void> {
  if (facts.length === 0) return;
  const file = await openFile(day, `${name}.txt`);
  try {
    // A line for each, so that a damaged one costs no other.
    writeAtEnd(file, facts.flatMap((fact) => linesOf([fact]).map(([, line]) => line)).join(''));
    file.flush();
  } finally {
    file.close();
  }
}

/** Everything stored of a day. Makes no database where there is none: rejects. */
async function storedOf(day: string): Promise<unknown[]> {
  const db = await openDB(DATABASE, undefined, { upgrade: (_db, _from, _to, tx) => tx.abort() });
  try {
    return await db.getAll('facts', dayRange(day));
  } finally {
    db.close();
  }
}
