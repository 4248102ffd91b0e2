import type { HeldAction, HoldingPlace } from '../app/ports.ts';
import type { DayId, Envelope } from '../facts/kinds/envelope.ts';
import { type FactId, isFactId } from '../shared/ids.ts';

const PREFIX = 'rollbook-held';

interface Surroundings {
  /** Unique to this window. */
  readonly window: string;
  /** Missing if the browser stores nothing at all. */
  readonly storage?: Storage | undefined;
  /**
   * Without locks nobody can tell whether another window is open; it then counts as closed, since restoring
   * twice does no harm.
   */
  readonly locks?: LockManager | undefined;
  /** Calls back when another window changes the storage. */
  readonly onOthers?: (changed: () => void) => void;
}

/**
 * The browser's small storage, which has its own room when the database has none. Each action is its own
 * entry under its window's name; an open window holds a lock, which the browser releases when it closes.
 */
export function holdingPlace({ window, storage, locks, onOthers }: Surroundings): HoldingPlace {
  const listeners = new Set<() => void>();
  const closed = new Set<string>();
  const watched = new Set([window]);
  let kept = 0;

  const tellAll = (): void => {
    for (const tell of listeners) tell();
  };

  /** Requests the locks of newly seen windows: each is granted once that window closes. */
  const watchOthers = (): void => {
    for (const { owner } of entriesIn(storage)) {
      if (watched.has(owner)) continue;
      watched.add(owner);
      if (!locks) closed.add(owner);
      else void locks.request(lockOf(owner), () => void closed.add(owner)).then(tellAll, () => {});
    }
  };

  onOthers?.(() => {
    watchOthers();
    tellAll();
  });
  watchOthers();

  return {
    keep(day, facts) {
      // Held for as long as the window is open.
      if (kept === 0) locks?.request(lockOf(window), () => new Promise(() => {})).catch(() => {});
      kept += 1;
      const key = [PREFIX, window, day, kept].join(' ');
      try {
        storage?.setItem(key, JSON.stringify(facts));
        return storage ? key : null;
      } catch {
        return null;
      }
    },
    remove: (key) => storage?.removeItem(key),
    left() {
      watchOthers();
      return entriesIn(storage)
        .filter(({ owner }) => closed.has(owner))
        .map(({ key, day }) => ({ key, day, facts: read(storage, key) }))
        .sort(asSaid);
    },
    idsOf: (day) =>
      entriesIn(storage)
        .filter((entry) => entry.day === day)
        .flatMap(({ key }) => (read(storage, key) ?? []).map(idOf))
        .filter(isFactId),
    forget(day) {
      for (const entry of entriesIn(storage)) if (entry.day === day) storage?.removeItem(entry.key);
    },
    listen(onChange) {
      listeners.add(onChange);
      return () => listeners.delete(onChange);
    },
  };
}

const lockOf = (window: string): string => `${PREFIX} ${window}`;

interface Entry {
  readonly key: string;
  readonly owner: string;
  readonly day: DayId;
}

function entriesIn(storage: Storage | undefined): Entry[] {
  const keys = Array.from({ length: storage?.length ?? 0 }, (_, at) => storage?.key(at) ?? '');
  return keys.flatMap((key) => {
    const [prefix, owner, day] = key.split(' ');
    return prefix === PREFIX && owner && day ? [{ key, owner, day }] : [];
  });
}

/** Null if it was torn. */
function read(storage: Storage | undefined, key: string): readonly Envelope[] | null {
  try {
    const facts: unknown = JSON.parse(storage?.getItem(key) ?? '');
    return Array.isArray(facts) && facts.length > 0 ? facts : null;
  } catch {
    return null;
  }
}

const idOf = (fact: Envelope | null | undefined): FactId => String(fact?.id ?? '');

/** In order of their first ids, which is the order of recording; torn ones come last. */
function asSaid(one: HeldAction, other: HeldAction): number {
  const idIn = ({ facts }: HeldAction): string => idOf(facts?.[0]) || '~';
  return idIn(one) < idIn(other) ? -1 : 1;
}
