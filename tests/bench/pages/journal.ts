// The page that reads a day's facts from IndexedDB and folds them, in one browser. `rows/journal.ts` drives it.
import { generateDay } from '../../../sample-days/generate.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import type { Fact } from '../../../src/facts/fact.ts';
import { readFact } from '../../../src/facts/fact.ts';

const SEED = 9;

interface Times {
  readonly read: number;
  readonly check: number;
  readonly fold: number;
}

const done = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

async function keep(facts: readonly Fact[]): Promise<IDBDatabase> {
  const name = `facts-${facts.length}`;
  const opening = indexedDB.open(name, 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore('facts', { keyPath: ['day', 'id'] });
  const db = await done(opening);
  const tx = db.transaction('facts', 'readwrite');
  for (const fact of facts) tx.objectStore('facts').put(fact);
  await new Promise((resolve) => {
    tx.oncomplete = resolve;
  });
  return db;
}

/** So many facts are folded before anything is counted: until then the browser is still compiling, on small days most. */
const WARM_FACTS = 200_000;
const MOST_WARM_RUNS = 40;

const SIZES = {
  one: { tracks: 16, performers: 12 },
  two: { tracks: 32, performers: 24, isTwice: true },
} as const;

/** Keeps a day of so many facts on one recorder or on two, and measures in turn, once warm: reading it all, checking every fact, folding. */
async function measure(facts: number, runs: number, recorders: keyof typeof SIZES): Promise<Times[]> {
  const takes = Math.max(20, Math.floor(facts / 8));
  const made = generateDay({ seed: SEED, takes, ...SIZES[recorders], facts });
  const db = await keep(made.facts);
  const times: Times[] = [];
  const warm = Math.min(MOST_WARM_RUNS, Math.ceil(WARM_FACTS / facts));
  for (let run = 0; run < warm + runs; run += 1) {
    const start = performance.now();
    const stored = await done<unknown[]>(db.transaction('facts').objectStore('facts').getAll());
    const read = performance.now();
    const checked = stored.map(readFact);
    const check = performance.now();
    const good = checked.flatMap((one) => (one.ok ? [one.value] : []));
    const from = performance.now();
    const { takeOrder } = foldDay(made.day, good);
    const folded = performance.now();
    if (good.length !== facts || takeOrder.length === 0) throw new Error('Not the day that was kept');
    if (run >= warm) times.push({ read: read - start, check: check - read, fold: folded - from });
  }
  db.close();
  return times;
}

Object.assign(window, { measure });
