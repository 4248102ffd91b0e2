import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { type DayOutline, FactIdTwice, type Journal } from '../../src/app/ports.ts';
import { openIdbJournal } from '../../src/storage/idb-journal.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { speaker, take } from '../day/say.ts';

const outline = (id: string): DayOutline => ({
  id,
  production: 'Test',
  label: 'Day 1',
  date: '2026-10-07',
  sample: false,
  takes: 0,
  facts: 0,
  lastAt: 0,
});

const events = { onBlocked: () => {}, onSuperseded: () => {} };

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

// One contract for both: whatever the app relies on, both keep.
const JOURNALS: [string, () => Promise<Journal>][] = [
  ['IndexedDB', () => openIdbJournal(events)],
  ['memory', async () => memoryJournal('memory')],
];

describe.each(JOURNALS)('the journal in %s', (_name, open) => {
  test('gives back the facts of one day in the order of their ids', async () => {
    const journal = await open();
    const phone = speaker();
    for (const number of [1, 2, 3]) await journal.append(phone.say(take('24', 1, number)), outline('day-1'));
    expect(await journal.read('day-1')).toEqual(phone.facts);
    expect(await journal.read('day-2')).toEqual([]);
  });

  test('keeps a fact once however often it is said', async () => {
    const journal = await open();
    const facts = speaker().say(take('24', 1, 1));
    await journal.append(facts, outline('day-1'));
    await journal.append(facts, outline('day-1'));
    expect(await journal.read('day-1')).toHaveLength(1);
  });

  test('refuses another fact under a known id and keeps nothing of that action', async () => {
    const journal = await open();
    const [fact] = speaker().say(take('24', 1, 1));
    await journal.append([fact!], outline('day-1'));
    const other = speaker('phoneb').say(take('24', 1, 2))[0]!;
    const forged = { ...fact!, at: fact!.at + 1 };
    await expect(journal.append([other, forged], outline('day-1'))).rejects.toBeInstanceOf(FactIdTwice);
    expect(await journal.read('day-1')).toEqual([fact]);
  });

  test('puts a whole fact in the place of one that says something else only where it is mended', async () => {
    const journal = await open();
    const [fact] = speaker().say(take('24', 1, 1));
    await journal.append([fact!], outline('day-1'));
    const whole = { ...fact!, at: fact!.at + 1 };
    await journal.mend([whole], { ...outline('day-1'), label: 'mended' });
    expect(await journal.read('day-1')).toEqual([whole]);
    expect(await journal.days()).toMatchObject([{ label: 'mended' }]);
  });

  test('lists days as they were last described, and forgets an erased one', async () => {
    const journal = await open();
    const phone = speaker();
    await journal.append(phone.say(take('24', 1, 1)), outline('day-1'));
    await journal.describe({ ...outline('day-1'), label: 'Day one' });
    expect(await journal.days()).toMatchObject([{ id: 'day-1', label: 'Day one' }]);
    await journal.erase('day-1');
    expect(await journal.days()).toEqual([]);
    expect(await journal.read('day-1')).toEqual([]);
  });
});

describe('the database', () => {
  test('that was emptied under an open journal gets back everything that is held of the day, once', async () => {
    const journal = await openIdbJournal(events);
    const phone = speaker();
    await journal.read('day-1');
    for (const number of [1, 2, 3]) await journal.append(phone.say(take('24', 1, number)), outline('day-1'));
    // The same deletion as of cleared site data: the open connection is told, and lets go.
    await forgetAll();
    const held = [...phone.facts];
    const begun = vi.spyOn(IDBDatabase.prototype, 'transaction');
    expect(await journal.append(phone.say(take('24', 1, 4)), outline('day-1'), () => held)).toBe(3);
    // In one transaction with the new one: a phone that dies in between has all of it or nothing.
    expect(begun.mock.calls.filter(([, mode]) => mode === 'readwrite')).toHaveLength(1);
    begun.mockRestore();
    expect(await journal.append(phone.say(take('24', 1, 5)), outline('day-1'), () => held)).toBe(0);
    expect(await journal.read('day-1')).toEqual(phone.facts);
    expect((await openIdbJournal(events)).state.database).toBe(journal.state.database);
  });

  test('keeps its name while it lives and gets a new one when it is made anew', async () => {
    const first = await openIdbJournal(events);
    const again = await openIdbJournal(events);
    expect(again.state.database).toBe(first.state.database);
    expect(first.state.database).toMatch(/^[0-9a-z]{6}$/);
    globalThis.indexedDB = new IDBFactory();
    const anew = await openIdbJournal(events);
    expect(anew.state.database).not.toBe(first.state.database);
  });
});

describe('a record that cannot be read', () => {
  test('gives way to the whole fact of the same id, and to nothing else', async () => {
    const journal = await openIdbJournal(events);
    const phone = speaker();
    for (const number of [1, 2, 3]) await journal.append(phone.say(take('24', 1, number)), outline('day-1'));
    const [first, second, third] = phone.facts;
    await damage(second!.id);
    // Another body under an id that can be read is refused, together with the mending that came along.
    const forged = { ...third!, at: third!.at + 1 };
    await expect(journal.append([second!, forged], outline('day-1'))).rejects.toBeInstanceOf(FactIdTwice);
    expect(await journal.read('day-1')).not.toContainEqual(second);
    await journal.append(phone.facts, outline('day-1'));
    expect(await journal.read('day-1')).toEqual([first, second, third]);
  });
});

const opened = (): Promise<IDBDatabase> =>
  new Promise((done, refuse) => {
    const opening = indexedDB.open('rollbook');
    opening.onerror = () => refuse(opening.error);
    opening.onsuccess = () => done(opening.result);
  });

/** Deletes the database, as clearing the site's data does. */
const forgetAll = (): Promise<unknown> =>
  new Promise((done) => {
    indexedDB.deleteDatabase('rollbook').onsuccess = done;
  });

/** Puts half a record where a whole one was, as a failing flash may. */
async function damage(id: string): Promise<void> {
  const db = await opened();
  const tx = db.transaction('facts', 'readwrite');
  tx.objectStore('facts').put({ day: 'day-1', id, kind: 'take-logged' });
  await new Promise((done, refuse) => {
    tx.oncomplete = done;
    tx.onabort = () => refuse(tx.error);
  });
  db.close();
}
