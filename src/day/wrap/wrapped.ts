import type { Day, FactOf } from '../model.ts';

export type Wrapped = FactOf<'day-wrapped'>;

/** The last word on whether the day is wrapped; undefined while it is open. */
export function wrapOf({ facts, takenBack, order }: Day): Wrapped | undefined {
  let last: Wrapped | undefined;
  for (const fact of facts) {
    if (fact.kind !== 'day-wrapped' || takenBack.has(fact.id)) continue;
    // Between phones, ids only show who had more facts, not who was first.
    if (!last || !order || order.timeOf(fact.id) >= order.timeOf(last.id)) last = fact;
  }
  return last?.wrapped ? last : undefined;
}
