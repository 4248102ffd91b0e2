import type { DueItem } from './due-list.ts';

/** Things of one kind that are due in the same minute for the same reasons: one line to read, one tap to do. */
export interface DueGroup {
  readonly names: readonly string[];
  readonly item: DueItem;
}

/** Gathers neighbours of a due list; the order stays. Three packs with one runtime, fresh together, are one group. */
export function dueGroups(items: readonly DueItem[]): DueGroup[] {
  const groups: { names: string[]; item: DueItem }[] = [];
  for (const item of items) {
    const last = groups.at(-1);
    if (last && isAlike(last.item, item)) last.names.push(item.name);
    else groups.push({ names: [item.name], item });
  }
  return groups;
}

const minute = (ms: number | undefined): number => Math.floor((ms ?? -1) / 60_000);

const isAlike = (a: DueItem, b: DueItem): boolean =>
  a.kind === b.kind &&
  a.kind !== 'card' &&
  a.action === b.action &&
  minute(a.dueAtMs) === minute(b.dueAtMs) &&
  JSON.stringify(a.reasons) === JSON.stringify(b.reasons);
