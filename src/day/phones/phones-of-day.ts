import { counterOf, databaseOf } from '../../shared/ids.ts';
import type { Day, Fact, UnknownFact } from '../model.ts';
import { holdersOf, type PhoneHolder } from './holders.ts';

/** One phone of the day, as far as this one knows. */
export interface DayPhone {
  readonly database: string;
  readonly holder: PhoneHolder | undefined;
  readonly entries: number;
  /** Its last entry that reached this phone: UTC ms by its own clock, and its zone. */
  readonly last: { readonly at: number; readonly zone: number };
  /** How many entries of this phone's it had not seen when it wrote that. */
  readonly lacks: number;
  /** Databases of which it had seen entries that are not here. */
  readonly hasMoreOf: readonly string[];
}

/** The phones that wrote this day, this one first, then by their last entry. `own` is this phone's database. */
export function phonesOfDay(day: Day, own: string): DayPhone[] {
  const written = new Map<string, (Fact | UnknownFact)[]>();
  for (const fact of [...day.facts, ...day.unknown]) {
    const database = databaseOf(fact.id);
    const facts = written.get(database);
    if (facts) facts.push(fact);
    else written.set(database, [fact]);
  }
  const ours = (written.get(own) ?? []).map(({ id }) => counterOf(id));
  return [...written]
    .map(([database, facts]): DayPhone => {
      const last = facts.reduce((one, other) => (other.id > one.id ? other : one));
      const seen = last.seen ?? {};
      const knewOfOurs = database === own ? Number.POSITIVE_INFINITY : (seen[own] ?? -1);
      return {
        database,
        holder: holdersOf(day).get(database),
        entries: facts.length,
        last: { at: last.at, zone: last.zone },
        lacks: ours.filter((counter) => counter > knewOfOurs).length,
        hasMoreOf: Object.keys(seen).filter((other) => seen[other]! > (day.highest.get(other) ?? -1)),
      };
    })
    .sort(
      (one, other) =>
        Number(other.database === own) - Number(one.database === own) || other.last.at - one.last.at,
    );
}
