import type { Day, FactOf, PartId, TakeId } from '../model.ts';
import { mainAtTake } from '../recorders/rolling.ts';

/** A file as the card has it; its track if it is one of a set of mono files. */
type CardName = NonNullable<FactOf<'card-checked'>['names']>[number]['files'][number];

type NamesOnCard = ReadonlyMap<TakeId, readonly CardName[]>;

/**
 * The names of takes' files where a card has others than the log, by the last check that saw them: on the card of
 * a recorder, or of each take's main one. A name typed since outweighs the main card.
 */
export function namesOnCard(day: Day, recorder?: PartId): NamesOnCard {
  const isOf = (take: TakeId, said: PartId | undefined): boolean => {
    const main = mainAtTake(day, take);
    return (said ?? main) === (recorder ?? main);
  };
  const names = new Map<TakeId, readonly CardName[]>();
  for (const fact of day.facts) {
    if (fact.kind === 'card-checked' && fact.names && !day.takenBack.has(fact.id)) {
      for (const { take, files, recorder: on } of fact.names) if (isOf(take, on)) names.set(take, files);
    } else if (
      fact.kind === 'take-described' &&
      fact.fields.file !== undefined &&
      !day.takenBack.has(fact.id)
    ) {
      if (isOf(fact.take, undefined)) names.delete(fact.take);
    }
  }
  return names;
}
