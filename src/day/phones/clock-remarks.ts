import { databaseOf, type FactId } from '../../shared/ids.ts';
import type { Day, Fact } from '../model.ts';

/** What happened to a phone's clock during the day, judged by its later facts. */
export type ClockRemark =
  /** The first fact after this had a clock time `ms` earlier than the fact before. */
  | { readonly kind: 'set-back'; readonly by: FactId; readonly ms: number }
  /** The clock was set ahead by `ms` while the window was visible, before this fact. */
  | { readonly kind: 'set-ahead'; readonly by: FactId; readonly ms: number }
  /** Minutes east of UTC before and after: travel, or daylight saving. */
  | { readonly kind: 'zone-changed'; readonly by: FactId; readonly from: number; readonly to: number };

/** Two windows of one phone may be this far apart without anybody touching the clock. */
const UNREMARKABLE_MS = 60_000;

/**
 * Where a phone's clock was set by more than a minute, or its zone changed, in order of facts. Each phone is
 * compared only with itself. A clock set ahead is only reported if a window saw it; otherwise it looks like a
 * pause.
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
