import type { Day } from '../day/model.ts';
import type { FactId } from '../shared/ids.ts';
import type { DayOutline } from './ports.ts';

/** No exported copy, a complete one, or one that misses facts. */
export type Copy = 'none' | 'whole' | 'older';

/** What the list stores about a day that its facts do not say. */
export interface Kept {
  /** UTC ms of the last export, and how many facts it had. */
  readonly at: number | undefined;
  readonly facts: number | undefined;
  /** Facts imported without checks from a damaged file. */
  readonly unsure?: readonly FactId[] | undefined;
}

export const sizeOf = (day: Day): number => day.facts.length + day.unknown.length;

export function copyOf({ at, facts }: Kept, size: number): Copy {
  if (at === undefined) return 'none';
  return facts === size ? 'whole' : 'older';
}

export function outlineOf(day: Day, kept: Kept): DayOutline {
  const { production, label, date, sample } = day.header;
  return {
    id: day.id,
    production,
    label,
    date,
    sample,
    takes: day.takeOrder.length,
    rolls: [...day.rolls],
    facts: day.facts.length + day.unknown.length,
    lastAt: day.lastAt,
    copiedAt: kept.at,
    copiedFacts: kept.facts,
    ...(kept.unsure && kept.unsure.length > 0 && { unsure: kept.unsure }),
  };
}
