import type { Page } from 'playwright-core';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import { readFact } from '../../src/facts/fact.ts';

/** The facts of a day in the browser's database, read past the app. */
export const storedFacts = (page: Page, day: string): Promise<unknown[]> =>
  page.evaluate(
    (wanted) =>
      new Promise<unknown[]>((done, refuse) => {
        const opening = indexedDB.open('rollbook');
        opening.onerror = () => refuse(opening.error);
        opening.onsuccess = () => {
          const db = opening.result;
          const reading = db
            .transaction('facts')
            .objectStore('facts')
            .getAll(IDBKeyRange.bound([wanted], [wanted, []]));
          reading.onerror = () => refuse(reading.error);
          reading.onsuccess = () => {
            db.close();
            done(reading.result);
          };
        };
      }),
    day,
  );

export interface Stored {
  readonly day: string;
  readonly id: string;
}

/** Takes facts out of the browser's database past the app, damages them there, or puts them there as they are given. */
export const spoilStored = (
  page: Page,
  facts: readonly Stored[],
  how: 'remove' | 'damage' | 'change',
): Promise<void> =>
  page.evaluate(
    ([spoiled, way]) =>
      new Promise<void>((done, refuse) => {
        const opening = indexedDB.open('rollbook');
        opening.onerror = () => refuse(opening.error);
        opening.onsuccess = () => {
          const tx = opening.result.transaction('facts', 'readwrite');
          const store = tx.objectStore('facts');
          for (const fact of spoiled)
            if (way === 'remove') store.delete([fact.day, fact.id]);
            else store.put(way === 'damage' ? { ...fact, kind: 7 } : fact);
          tx.onerror = () => refuse(tx.error);
          tx.oncomplete = () => {
            opening.result.close();
            done();
          };
        };
      }),
    [facts, how] as const,
  );

/** Stored facts, folded; throws where one is damaged. */
export function foldStored(day: string, stored: readonly unknown[]): Day {
  const facts = stored.map((raw) => {
    const read = readFact(raw);
    if (!read.ok) throw new Error(`Damaged: ${JSON.stringify(raw)}`);
    return read.value;
  });
  return foldDay(day, facts);
}

/** The day that a window has open. */
export const openDayId = (page: Page): string => /#\/day\/([^/]+)/.exec(page.url())![1]!;
