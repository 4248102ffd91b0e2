import type { Day } from '../day/model.ts';
import type { FactId } from '../shared/ids.ts';
import type { DayOutline } from './ports.ts';

/** No copy left the phone, one that has every fact of the day, or one that has not. */
export type Copy = 'none' | 'whole' | 'older';

/** What the list keeps of a day besides what follows from its facts. */
export interface Kept {
  /** UTC ms when a copy last left the phone, and how many facts it had. */
  readonly at: number | undefined;
  readonly facts: number | undefined;
  /** Facts that came from a damaged file without checks. */
  readonly unsure?: readonly FactId[] | undefined;
}

export const sizeOf = (day: Day): number => day.facts.length + day.unknown.length;

export function copyOf({ at, facts }: Kept, size: number): Copy {
  if (at === undefined) return 'none';
  return facts === size ? 'whole' : 'older';
}

/** What the list shows of a day. */
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
