import type { Day, FactOf, TakeId } from '../model.ts';

/** A file as the card has it; its track if it is one of a set of mono files. */
type CardName = NonNullable<FactOf<'card-checked'>['names']>[number]['files'][number];

/**
 * The names of takes' files where the card has others than the log, by the last check that saw them. A name
 * typed since outweighs the card.
 */
export function namesOnCard(day: Day): ReadonlyMap<TakeId, readonly CardName[]> {
  const names = new Map<TakeId, readonly CardName[]>();
  for (const fact of day.facts) {
    if (fact.kind === 'card-checked' && fact.names && !day.takenBack.has(fact.id))
      for (const { take, files } of fact.names) names.set(take, files);
    else if (fact.kind === 'take-described' && fact.fields.file !== undefined && !day.takenBack.has(fact.id))
      names.delete(fact.take);
  }
  return names;
}
