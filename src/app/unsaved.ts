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

/** Actions of one day that closed windows left unsaved. */
export interface UnsavedDay {
  readonly day: DayId;
  /** The day with these actions restored. */
  readonly after: Day;
  /** The phone has nothing else of this day. */
  readonly isNew: boolean;
  /** One list of facts per action, oldest first. */
  readonly actions: readonly (readonly (Fact | UnknownFact)[])[];
  /** Unreadable actions: kept until the user discards them. */
  readonly unreadable: number;
}

/** Actions left unsaved by a closed window: offered until the user restores or discards them. */
export interface Unsaved {
  readonly days: ReadonlySignal<readonly UnsavedDay[]>;
  countOf(day: DayId): number;
  /** Checks again what is left, and drops what has reached the disk after all. */
  refresh(): Promise<void>;
  /** Restores a day's leftover actions under their own ids and returns how many there were. */
  restore(day: DayId): Promise<Result<number>>;
  discard(day: DayId): Promise<void>;
}

interface Phone {
  readonly holding: HoldingPlace | undefined;
  readonly open: (day: DayId) => Promise<DayStore>;
  readonly onDisk: (day: DayId) => Promise<readonly Envelope[]>;
  /** Includes what an open day still has in memory. */
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
        store.addForeign(readAll(merged.value.fresh).facts, merged.value.fresh, key);
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
