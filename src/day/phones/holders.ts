import { databaseOf } from '../../shared/ids.ts';
import type { Day } from '../model.ts';

/** Who holds a phone, and their job on set. */
export interface PhoneHolder {
  readonly name: string;
  readonly job: string;
}

const found = new WeakMap<Day, ReadonlyMap<string, PhoneHolder>>();

/** Who holds each phone of the day, by database; phones that nobody named are missing. */
export function holdersOf(day: Day): ReadonlyMap<string, PhoneHolder> {
  const known = found.get(day);
  if (known) return known;
  const holders = new Map<string, PhoneHolder>();
  // A phone names itself, so its own order decides.
  for (const fact of day.facts) {
    if (fact.kind !== 'phone-named' || day.takenBack.has(fact.id)) continue;
    holders.set(databaseOf(fact.id), { name: fact.name, job: fact.job });
  }
  found.set(day, holders);
  return holders;
}
