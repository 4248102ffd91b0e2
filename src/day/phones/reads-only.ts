import { databaseOf } from '../../shared/ids.ts';
import type { Day } from '../model.ts';

/** Why a phone may only read a day: it was removed, it handed the day over, or it joined to look on. */
export type ReadsOnly = 'removed' | 'handed-over' | 'looks-on';

/** Null for a phone that may write, as on every day that nobody shared. `looksOn`: it joined with an onlooker's code. */
export function readsOnly(day: Day, database: string, looksOn: boolean): ReadsOnly | null {
  let why: ReadsOnly | null = looksOn ? 'looks-on' : null;
  for (const fact of day.facts) {
    if (fact.kind === 'writer-removed' && fact.database === database) why = 'removed';
    else if (fact.kind === 'day-passed-on' && databaseOf(fact.id) === database) why = 'handed-over';
    else if (fact.kind === 'writer-admitted' && fact.database === database)
      why = fact.role === 'onlooker' ? 'looks-on' : null;
  }
  return why;
}
