import { computed, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { DayStore } from './day-store.ts';
import type { DayOutline } from './ports.ts';

/** The days of the phone: what the disk had when it was last asked, and what open days have said since. */
export interface DayList {
  readonly days: ReadonlySignal<readonly DayOutline[]>;
  /** What the disk lists now. */
  readonly listed: Signal<readonly DayOutline[]>;
  /** From now on the list follows this day by itself. */
  follow(store: DayStore): void;
  leave(store: DayStore): void;
}

export function dayList(): DayList {
  const listed = signal<readonly DayOutline[]>([]);
  const followed = signal<readonly DayStore[]>([]);
  return {
    listed,
    days: computed(() => {
      const byId = new Map(listed.value.map((day) => [day.id, day]));
      for (const store of followed.value) {
        const open = outlineOfOpen(store);
        const day = newer(byId.get(open.id), open);
        if (day) byId.set(open.id, day);
      }
      return [...byId.values()].sort(newestFirst);
    }),
    follow(store) {
      if (!followed.peek().includes(store)) followed.value = [...followed.peek(), store];
    },
    leave(store) {
      followed.value = followed.peek().filter((one) => one !== store);
    },
  };
}

/** Reads its signals, so that whoever shows the list is told of every entry and every copy. */
function outlineOfOpen({ day, copy, outline }: DayStore): DayOutline {
  void day.value;
  void copy.value;
  return outline();
}

/** The open day may be ahead of the disk; another window may have sent a copy that this one does not know of. */
function newer(onDisk: DayOutline | undefined, open: DayOutline): DayOutline | undefined {
  // Looked for and not there, or erased.
  if (open.facts === 0) return onDisk;
  if (!onDisk) return open;
  const { copiedAt, copiedFacts } = (onDisk.copiedAt ?? 0) > (open.copiedAt ?? 0) ? onDisk : open;
  return { ...(open.facts > onDisk.facts ? open : onDisk), copiedAt, copiedFacts };
}

/** Newest date first, then last changed. A day without a date counts as dated when it was last changed. */
const newestFirst = (a: DayOutline, b: DayOutline): number => {
  const dateOf = ({ date, lastAt }: DayOutline): string =>
    date || new Date(lastAt).toISOString().slice(0, 10);
  return dateOf(b).localeCompare(dateOf(a)) || b.lastAt - a.lastAt;
};
