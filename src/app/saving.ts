import { type ReadonlySignal, signal } from '@preact/signals';
import type { Envelope } from '../facts/envelope.ts';
import type { DayOutline, Journal } from './ports.ts';

export interface Saving {
  readonly state: 'saved' | 'saving' | 'not-saved';
  /** Actions that are held in memory only. */
  readonly waiting: number;
  /** The name of what the device said, while it says no. */
  readonly because: string | null;
  /** Facts put back after the device had emptied its database under the open app; 0 unless that happened. */
  readonly regained: number;
}

export interface SavingQueue {
  readonly saving: ReadonlySignal<Saving>;
  add(facts: readonly Envelope[], outline: () => DayOutline): void;
  /** Tries again at once whatever is held. */
  retry(): void;
  /** Resolves when nothing waits. */
  settled(): Promise<void>;
  /** Gives up whatever is held: its day was erased, and no later try may bring a part of it back. */
  drop(): void;
}

const FIRST_RETRY_MS = 1000;
const LAST_RETRY_MS = 15_000;

/**
 * One queue for one day: actions are kept in the order they were given, each in its own transaction. What the device
 * refuses is held and tried again with the same ids, so trying twice keeps once. `everything` is all that the window
 * holds of the day, for a database that turns out to have been emptied.
 */
export function savingQueue(
  journal: Journal,
  onSaved: () => void,
  everything: () => readonly Envelope[],
): SavingQueue {
  const saving = signal<Saving>({ state: 'saved', waiting: 0, because: null, regained: 0 });
  const held: { facts: readonly Envelope[]; outline: () => DayOutline }[] = [];
  let running = false;
  let delay = FIRST_RETRY_MS;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let regained = 0;
  let waiters: (() => void)[] = [];

  const report = (because: string | null): void => {
    const state = held.length === 0 ? 'saved' : because ? 'not-saved' : 'saving';
    saving.value = { state, waiting: held.length, because, regained };
  };

  /** What waits in the queue has its own turn, and is not something that came back. */
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
        regained += await journal.append(first.facts, first.outline(), saidBefore);
        held.shift();
        delay = FIRST_RETRY_MS;
        report(null);
        onSaved();
      }
      tellWaiters();
    } catch (error) {
      report(error instanceof Error ? error.name : 'UnknownError');
      timer = setTimeout(() => void run(), delay);
      delay = Math.min(delay * 2, LAST_RETRY_MS);
    } finally {
      running = false;
    }
  };

  return {
    saving,
    add(facts, outline) {
      held.push({ facts, outline });
      // The disk is asked first, and works while the rest is told.
      void run();
      report(saving.peek().because);
    },
    retry() {
      if (held.length > 0) void run();
    },
    settled: () =>
      held.length === 0
        ? Promise.resolve()
        : new Promise((done) => {
            waiters = [...waiters, done];
          }),
    drop() {
      clearTimeout(timer);
      held.length = 0;
      report(null);
      tellWaiters();
    },
  };
}
