import { databaseOf, type FactId } from '../../shared/ids.ts';
import type { Day, Fact } from '../model.ts';

/** What happened to the clock of one phone during the day, seen from what was said after it. */
export type ClockRemark =
  /** The first word after it was said `ms` earlier, by that clock, than the word before it. */
  | { readonly kind: 'set-back'; readonly by: FactId; readonly ms: number }
  /** It was set ahead by `ms` while the window was in view, before this was said. */
  | { readonly kind: 'set-ahead'; readonly by: FactId; readonly ms: number }
  /** Minutes east of UTC before and after: another country, or summer time. */
  | { readonly kind: 'zone-changed'; readonly by: FactId; readonly from: number; readonly to: number };

/** Two windows of one phone may be this far apart without anybody having touched the clock. */
const UNREMARKABLE_MS = 60_000;

/**
 * Where a phone's clock was set by more than a minute, or its zone changed, in the order of facts. Each phone is
 * held against itself only. A clock set ahead is told where a window saw it; otherwise it looks like a pause.
 */
export function clockRemarks(day: Day): ClockRemark[] {
  const lastOf = new Map<string, Fact>();
  return day.facts.flatMap((fact) => {
    const database = databaseOf(fact.id);
    const last = lastOf.get(database);
    lastOf.set(database, fact);
    return last ? remarksBetween(last, fact) : [];
  });
}

function remarksBetween(last: Fact, fact: Fact): ClockRemark[] {
  const remarks: ClockRemark[] = [];
  if (last.at - fact.at > UNREMARKABLE_MS) {
    remarks.push({ kind: 'set-back', by: fact.id, ms: last.at - fact.at });
  }
  if (fact.ahead !== undefined && fact.ahead > UNREMARKABLE_MS) {
    remarks.push({ kind: 'set-ahead', by: fact.id, ms: fact.ahead });
  }
  if (last.zone !== fact.zone) {
    remarks.push({ kind: 'zone-changed', by: fact.id, from: last.zone, to: fact.zone });
  }
  return remarks;
}
