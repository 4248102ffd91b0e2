import type { Fact, FactOf } from '../../facts/fact.ts';
import { UNITS } from '../../facts/kinds/take-logged.ts';
import type { Day, FactId, Open, TakeId, Unit } from '../model.ts';
import { takesInOrder } from '../takes.ts';
import { joinedTakes } from './joined-takes.ts';

export type UnitsOfTakes = ReadonlyMap<TakeId, readonly Open<Unit>[]>;

const MAIN: readonly Unit[] = ['main'];

/**
 * Which unit shot each take, the main one where nothing is said; both, where two phones' logs of it were joined, until
 * somebody says which.
 */
export function unitsOfTakes(day: Day): UnitsOfTakes {
  const units = new Map<TakeId, readonly Open<Unit>[]>(
    takesInOrder(day).map(({ id, unit }) => [id, unit ? [unit] : MAIN]),
  );
  const said = day.facts.filter(({ id }) => !day.takenBack.has(id));
  const joins = said.filter((fact): fact is FactOf<'takes-joined'> => fact.kind === 'takes-joined');
  if (joins.length === 0) return units;
  const other = unitsSaid(said);
  const joinedAt = new Map(joins.map(({ take, id }) => [take, id]));
  for (const [take, into] of joinedTakes(joins, (id) => day.takeItems.has(id))) {
    const own = units.get(into);
    if (!own || (other.get(into)?.by ?? '') > joinedAt.get(take)!) continue;
    units.set(into, inOrder([...new Set([...own, other.get(take)?.unit ?? 'main'])]));
  }
  return units;
}

/** What was said last of each take, those included that are part of another. */
function unitsSaid(facts: readonly Fact[]): Map<TakeId, { unit: Open<Unit>; by: FactId }> {
  const said = new Map<TakeId, { unit: Open<Unit>; by: FactId }>();
  for (const fact of facts) {
    if (fact.kind !== 'take-logged' && fact.kind !== 'take-described') continue;
    const { unit } = fact.fields;
    if (unit !== undefined)
      said.set(fact.kind === 'take-logged' ? fact.id : fact.take, { unit, by: fact.id });
  }
  return said;
}

const placeOf = (unit: Open<Unit>): number => (UNITS as readonly string[]).indexOf(unit) >>> 0;

/** Those of a newer version last. */
const inOrder = (units: Open<Unit>[]): readonly Open<Unit>[] => units.sort((a, b) => placeOf(a) - placeOf(b));
