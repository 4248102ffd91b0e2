import { counterOf, databaseOf } from '../../shared/ids.ts';
import type { Day, Fact, UnknownFact } from '../model.ts';
import { holdersOf, type PhoneHolder } from './holders.ts';

const byId = (one: { id: string }, other: { id: string }): number => (one.id < other.id ? -1 : 1);

/** One phone of the day, as far as this one knows. */
export interface DayPhone {
  readonly database: string;
  readonly holder: PhoneHolder | undefined;
  readonly entries: number;
  /** Its last entry that reached this phone: UTC ms by its own clock, and its zone. Null if none did. */
  readonly last: { readonly at: number; readonly zone: number } | null;
  /** How many entries of this phone's it had not seen when it wrote that. */
  readonly lacks: number;
  /** Databases of which it has entries that are not here: its own among them, if another phone had seen those. */
  readonly hasMoreOf: readonly string[];
}

/**
 * The phones that wrote this day, this one first (it may not have written yet), then by their last entry; also those of
 * which only others have heard. `own` is this phone's database.
 */
export function phonesOfDay(day: Day, own: string): DayPhone[] {
  const written = new Map<string, (Fact | UnknownFact)[]>([[own, []]]);
  for (const fact of [...day.facts, ...day.unknown]) {
    const database = databaseOf(fact.id);
    const facts = written.get(database);
    if (facts) facts.push(fact);
    else written.set(database, [fact]);
  }
  const told = toldOf(day);
  for (const database of told.keys()) if (!written.has(database)) written.set(database, []);
  const isMissing = (database: string, counter: number): boolean =>
    counter > (day.highest.get(database) ?? -1);
  const ours = written.get(own)!.map(({ id }) => counterOf(id));
  return [...written]
    .map(([database, facts]): DayPhone => {
      const last = facts.toSorted(byId).at(-1);
      const seen = last?.seen ?? {};
      const knewOfOurs = database === own ? Number.POSITIVE_INFINITY : (seen[own] ?? -1);
      return {
        database,
        holder: holdersOf(day).get(database),
        entries: facts.length,
        last: last ? { at: last.at, zone: last.zone } : null,
        lacks: ours.filter((counter) => counter > knewOfOurs).length,
        hasMoreOf: [
          ...(isMissing(database, told.get(database) ?? -1) ? [database] : []),
          ...Object.keys(seen).filter((other) => isMissing(other, seen[other]!)),
        ],
      };
    })
    .sort(
      (one, other) =>
        Number(other.database === own) - Number(one.database === own) ||
        (other.last?.at ?? 0) - (one.last?.at ?? 0),
    );
}

/** The highest counter of each database that anybody had seen. */
function toldOf(day: Day): Map<string, number> {
  const told = new Map<string, number>();
  for (const { seen = {} } of [...day.facts, ...day.unknown])
    for (const [database, counter] of Object.entries(seen))
      told.set(database, Math.max(told.get(database) ?? -1, counter));
  return told;
}
