import type { DayOutline } from '../app/ports.ts';
import type { Envelope } from '../facts/kinds/envelope.ts';

/**
 * The way of nearly every tap: one strict transaction in which everything is asked for at once, the commit too, so that
 * the disk works while the screen is drawn. Nothing is looked up first: a fact that is known already undoes the whole.
 * False where it was undone for a known fact.
 */
export function quickAppend(
  db: IDBDatabase,
  facts: readonly Envelope[],
  outline: DayOutline,
): Promise<boolean> {
  const tx = db.transaction(['facts', 'days'], 'readwrite', { durability: 'strict' });
  return new Promise((resolve, reject) => {
    let known = false;
    tx.oncomplete = () => resolve(true);
    // A request that failed tells its transaction why.
    tx.onerror = ({ target }) => {
      known ||= (target as IDBRequest).error?.name === 'ConstraintError';
    };
    tx.onabort = () => (known ? resolve(false) : reject(tx.error ?? new DOMException('', 'AbortError')));
    try {
      const store = tx.objectStore('facts');
      for (const fact of facts) store.add(fact);
      tx.objectStore('days').put(outline);
      // Old browsers commit when nothing more is asked for.
      tx.commit?.();
    } catch (error) {
      tx.onabort = null;
      tx.abort();
      reject(error);
    }
  });
}
