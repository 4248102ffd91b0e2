import type { Fact, FactOf } from '../../facts/fact.ts';
import type { TakeId } from '../model.ts';
import { describeTake, itemOnLine, type OfTake, type TakeDraft, takeFrom } from '../takes.ts';
import { type Draft, layAgain } from './draft.ts';
import { isOnTheLine } from './line-item.ts';

/**
 * Takes back what the last fact said takes back, where that concerns no more than takes and the line from some place
 * on: what undo does on a set. False, with nothing done, where it concerns more and the day must be folded anew.
 */
export function takeBack(draft: Draft, said: FactOf<'fact-retracted'>): boolean {
  // On a merged day what is said of a take does not stand in the order of the ids.
  if (draft.order) return false;
  const targets = said.targets.filter((id) => id < said.id && !draft.takenBack.has(id));
  const facts = draft.facts.filter(({ id }) => targets.includes(id));
  if (!facts.every((fact) => isOfTake(fact) || isOnTheLine(fact))) return false;
  for (const id of targets) draft.takenBack.add(id);
  for (const fact of facts) {
    const id = isOfTake(fact) ? fact.take : fact.id;
    const take = takeAnew(draft, id);
    if (take) draft.takes.set(id, take);
    else draft.takes.delete(id);
  }
  const places = facts.filter(isOnTheLine).map(({ id }) => itemOnLine(draft, id)!.place);
  if (places.length > 0) layAgain(draft, Math.min(...places));
  return true;
}

const isOfTake = (fact: Fact): fact is OfTake => fact.kind === 'take-described' || fact.kind === 'note-added';

function takeAnew({ facts, takenBack }: Draft, id: TakeId): TakeDraft | undefined {
  let take: TakeDraft | undefined;
  for (const fact of facts) {
    if (takenBack.has(fact.id)) continue;
    if (fact.kind === 'take-logged' && fact.id === id) take = takeFrom(fact);
    else if (take && isOfTake(fact) && fact.take === id) describeTake(take, fact);
  }
  return take;
}
