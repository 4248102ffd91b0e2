import { type ReadonlySignal, signal } from '@preact/signals';
import { foldDay } from '../day/fold/fold.ts';
import type { Day } from '../day/model.ts';
import { type Fact, isReadable, type UnknownFact } from '../facts/fact.ts';
import type { DayId, Envelope } from '../facts/kinds/envelope.ts';
import { mergeFacts } from '../facts/merge-facts.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import type { DayStore } from './day-store.ts';
import type { HeldAction, HoldingPlace } from './ports.ts';
import { readAll } from './read-stored.ts';

/** What closed windows held of one day, and the phone has not. */
export interface UnsavedDay {
  readonly day: DayId;
  /** The day as it would be with them. */
  readonly after: Day;
  /** The phone has nothing else of such a day. */
  readonly isNew: boolean;
  /** Action by action, in the order in which they were said. */
  readonly actions: readonly (readonly (Fact | UnknownFact)[])[];
  /** Actions that cannot be read: they stay where they are until somebody discards them. */
  readonly unreadable: number;
}

/** Actions that were held when a window was closed: offered until somebody restores or discards them. */
export interface Unsaved {
  readonly days: ReadonlySignal<readonly UnsavedDay[]>;
  /** How many actions are left of a day. */
  countOf(day: DayId): number;
  /** Looks again at what is left; what has reached the disk after all is let go. */
  refresh(): Promise<void>;
  /** Puts what is left of a day on it again, under its own ids, and gives how many actions came. */
  restore(day: DayId): Promise<Result<number>>;
  discard(day: DayId): Promise<void>;
}

interface Phone {
  readonly holding: HoldingPlace | undefined;
  readonly open: (day: DayId) => Promise<DayStore>;
  readonly onDisk: (day: DayId) => Promise<readonly Envelope[]>;
  /** With what an open day holds of it as well. */
  readonly onDiskOrHeld: (day: DayId) => Promise<readonly Envelope[]>;
}

const isWhole = ({ facts }: HeldAction): boolean => facts?.every(isReadable) ?? false;

export function unsavedActions({ holding, open, onDisk, onDiskOrHeld }: Phone): Unsaved {
  const days = signal<readonly UnsavedDay[]>([]);
  const leftOf = (day: DayId): HeldAction[] => (holding?.left() ?? []).filter((one) => one.day === day);

  const refresh = async (): Promise<void> => {
    const named = [...new Set((holding?.left() ?? []).map(({ day }) => day))];
    const looked = await Promise.all(named.map(lookAt));
    days.value = looked.filter((left) => left !== null);
  };

  const lookAt = async (day: DayId): Promise<UnsavedDay | null> => {
    const [saved, stored] = await Promise.all([onDisk(day), onDiskOrHeld(day)]);
    for (const action of leftOf(day)) if (isKnown(saved, action)) holding?.remove(action.key);
    const still = leftOf(day).filter((action) => !isKnown(stored, action));
    if (still.length === 0) return null;
    const whole = still.filter(isWhole).map(({ facts }) => facts ?? []);
    return {
      day,
      after: foldDay(day, readAll([...stored, ...whole.flat()]).facts),
      isNew: stored.length === 0,
      actions: whole.map((facts) => readAll(facts).facts),
      unreadable: still.length - whole.length,
    };
  };

  const restore = async (day: DayId): Promise<Result<number>> => {
    const store = await open(day);
    const stored = await onDiskOrHeld(day);
    const whole = leftOf(day).filter(isWhole);
    let contradicting = 0;
    for (const { key, facts } of whole) {
      const merged = mergeFacts(stored, facts ?? []);
      if (!merged.ok) contradicting += 1;
      else if (merged.value.fresh.length > 0)
        store.addLeft(readAll(merged.value.fresh).facts, merged.value.fresh, key);
    }
    await refresh();
    return contradicting > 0 ? fail({ code: 'held-contradicts', count: contradicting }) : ok(whole.length);
  };

  holding?.listen(() => void refresh().catch(() => {}));
  return {
    days,
    countOf(day) {
      const left = days.value.find((one) => one.day === day);
      return left ? left.actions.length + left.unreadable : 0;
    },
    refresh,
    restore,
    async discard(day) {
      for (const { key } of leftOf(day)) holding?.remove(key);
      await refresh();
    },
  };
}

function isKnown(stored: readonly Envelope[], action: HeldAction): boolean {
  if (!isWhole(action)) return false;
  const merged = mergeFacts(stored, action.facts ?? []);
  return merged.ok && merged.value.fresh.length === 0;
}
