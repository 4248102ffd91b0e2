import { type ReadonlySignal, signal } from '@preact/signals';
import type { Envelope } from '../facts/kinds/envelope.ts';
import type { DayOutline, HoldingPlace, Journal } from './ports.ts';

export interface Saving {
  readonly state: 'saved' | 'saving' | 'not-saved';
  /** Actions that are in memory only. */
  readonly waiting: number;
  /** The name of the device's error while saving fails. */
  readonly because: string | null;
  /** Facts written back after the browser emptied its database while the app was open; usually 0. */
  readonly restored: number;
  /** Some unsaved facts could not be put aside either: they are lost when the window closes. */
  readonly inWindowOnly?: true;
}

export interface SavingQueue {
  readonly saving: ReadonlySignal<Saving>;
  /** `left`: the key under which a closed window had put the action aside. */
  add(facts: readonly Envelope[], outline: () => DayOutline, left?: string): void;
  /** Retries all unsaved actions at once. */
  retry(): void;
  /** Resolves when nothing is waiting. */
  flushed(): Promise<void>;
  /** Puts unsaved facts where they outlive this window. */
  putAside(): void;
  /** Drops all unsaved actions: the day was erased, and no retry may bring part of it back. */
  drop(): void;
}

interface Parts {
  readonly journal: Journal;
  readonly holding: HoldingPlace | undefined;
  readonly onSaved: () => void;
  /** All that the window has of the day, in case the database turns out to have been emptied. */
  readonly everything: () => readonly Envelope[];
}

interface Waiting {
  readonly facts: readonly Envelope[];
  readonly outline: () => DayOutline;
  /** Where it was put aside; null if that failed. */
  key: string | null;
}

const FIRST_RETRY_MS = 1000;
const LAST_RETRY_MS = 15_000;

/**
 * One queue per day: actions are saved in order, each in its own transaction. What the device refuses is
 * retried with the same ids, so a retry stores nothing twice, and meanwhile put aside for the next window.
 */
export function savingQueue({ journal, holding, onSaved, everything }: Parts): SavingQueue {
  const saving = signal<Saving>({ state: 'saved', waiting: 0, because: null, restored: 0 });
  const held: Waiting[] = [];
  let running = false;
  let delay = FIRST_RETRY_MS;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let restored = 0;
  let waiters: (() => void)[] = [];

  const report = (because: string | null): void => {
    const state = held.length === 0 ? 'saved' : because ? 'not-saved' : 'saving';
    const inWindowOnly = state === 'not-saved' && held.some(({ key }) => key === null);
    saving.value = {
      state,
      waiting: held.length,
      because,
      restored,
      ...(inWindowOnly && { inWindowOnly }),
    };
  };

  const putAside = (): void => {
    for (const action of held) action.key ??= holding?.keep(action.outline().id, action.facts) ?? null;
  };

  const letGo = ({ key }: Waiting): void => {
    if (key !== null) holding?.remove(key);
  };

  /** Facts still in the queue are saved in turn; they do not count as recovered. */
  const saidBefore = (): Envelope[] => {
    const waiting = new Set(held.flatMap(({ facts }) => facts.map(({ id }) => id)));
    return everything().filter(({ id }) => !waiting.has(id));
  };

  const tellWaiters = (): void => {
    for (const done of waiters.splice(0)) done();
  };

  const run = async (): Promise<void> => {
    if (running) return;
    running = true;
    clearTimeout(timer);
    try {
      for (let first = held[0]; first; first = held[0]) {
        restored += await journal.append(first.facts, first.outline(), saidBefore);
        held.shift();
        letGo(first);
        delay = FIRST_RETRY_MS;
        report(null);
        onSaved();
      }
      tellWaiters();
    } catch (error) {
      putAside();
      report(error instanceof Error ? error.name : 'UnknownError');
      timer = setTimeout(() => void run(), delay);
      delay = Math.min(delay * 2, LAST_RETRY_MS);
    } finally {
      running = false;
    }
  };

  return {
    saving,
    add(facts, outline, left) {
      const action: Waiting = { facts, outline, key: null };
      held.push(action);
      // Starts the disk first, so that it works while listeners run.
      void run();
      // An action restored from a closed window stays put aside until it is saved.
      if (saving.peek().because !== null || left) putAside();
      if (left && action.key !== null) holding?.remove(left);
      else action.key ??= left ?? null;
      report(saving.peek().because);
    },
    retry() {
      if (held.length > 0) void run();
    },
    flushed: () =>
      held.length === 0
        ? Promise.resolve()
        : new Promise((done) => {
            waiters = [...waiters, done];
          }),
    putAside,
    drop() {
      clearTimeout(timer);
      held.forEach(letGo);
      held.length = 0;
      report(null);
      tellWaiters();
    },
  };
}
