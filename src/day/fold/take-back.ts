import type { Fact, FactOf } from '../../facts/fact.ts';
import type { TakeId } from '../model.ts';
import { describeTake, itemOnLine, type MutableTake, type OfTake, takeFrom } from '../takes.ts';
import { type FoldState, rebuildLine } from './fold-state.ts';
import { isOnTheLine } from './line-item.ts';

/**
 * Applies the last fact's retraction if it only concerns takes and the line from some place on, as a
 * normal undo does. Otherwise returns false with nothing done, and the day must be folded again.
 */
export function takeBack(state: FoldState, said: FactOf<'fact-retracted'>): boolean {
  // On a merged day, facts about a take are not in order of ids.
  if (state.order) return false;
  const targets = said.targets.filter((id) => id < said.id && !state.takenBack.has(id));
  const facts = state.facts.filter(({ id }) => targets.includes(id));
  if (!facts.every((fact) => isOfTake(fact) || isOnTheLine(fact))) return false;
  for (const id of targets) state.takenBack.add(id);
  for (const fact of facts) {
    const id = isOfTake(fact) ? fact.take : fact.id;
    const take = takeAnew(state, id);
    if (take) state.takes.set(id, take);
    else state.takes.delete(id);
  }
  const places = facts.filter(isOnTheLine).map(({ id }) => itemOnLine(state, id)!.place);
  if (places.length > 0) rebuildLine(state, Math.min(...places));
  return true;
}

const isOfTake = (fact: Fact): fact is OfTake => fact.kind === 'take-described' || fact.kind === 'note-added';

function takeAnew({ facts, takenBack }: FoldState, id: TakeId): MutableTake | undefined {
  let take: MutableTake | undefined;
  for (const fact of facts) {
    if (takenBack.has(fact.id)) continue;
    if (fact.kind === 'take-logged' && fact.id === id) take = takeFrom(fact);
    else if (take && isOfTake(fact) && fact.take === id) describeTake(take, fact);
  }
  return take;
}
