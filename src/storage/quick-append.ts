import type { DayOutline } from '../app/ports.ts';
import type { Envelope } from '../facts/kinds/envelope.ts';

/**
 * The path of nearly every tap: one strict transaction with everything requested at once, commit included, so
 * that the disk works while the screen is drawn. Looks nothing up first: one known fact aborts it all, and
 * then this returns false.
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
    // A failed request tells its transaction why.
    tx.onerror = ({ target }) => {
      known ||= (target as IDBRequest).error?.name === 'ConstraintError';
    };
    tx.onabort = () => (known ? resolve(false) : reject(tx.error ?? new DOMException('', 'AbortError')));
    try {
      const store = tx.objectStore('facts');
      for (const fact of facts) store.add(fact);
      tx.objectStore('days').put(outline);
      // Older browsers commit when nothing more is requested.
      tx.commit?.();
    } catch (error) {
      tx.onabort = null;
      tx.abort();
      reject(error);
    }
  });
}
