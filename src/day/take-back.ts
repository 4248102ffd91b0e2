import type { Fact } from '../facts/fact.ts';
import type { FactId } from '../shared/ids.ts';
import { type Draft, layAgain } from './draft.ts';
import { isOnTheLine } from './line-order.ts';
import type { Take, TakeId } from './model.ts';
import { factsTakenBack } from './retractions.ts';
import { takeFrom, takeWith } from './takes.ts';

/**
 * Brings a draft up to what its facts take back by now, where that concerns no more than takes and the line from some
 * place on: what undo does on a set. False, with nothing done, where it concerns more and the day must be folded anew.
 */
export function takeBack(draft: Draft): boolean {
  const takenBack = factsTakenBack(draft.facts);
  const turned = draft.facts.filter(({ id }) => takenBack.has(id) !== draft.takenBack.has(id));
  if (!turned.every((fact) => isEasy(fact, takenBack))) return false;
  draft.takenBack = takenBack;
  for (const id of takesIn(turned)) {
    const take = takeAnew(draft, id);
    if (take) draft.takes.set(id, take);
    else draft.takes.delete(id);
  }
  const places = turned.flatMap(({ id }) => draft.placeOf.get(id) ?? []);
  if (places.length > 0) layAgain(draft, Math.min(...places));
  return true;
}

/** A take that comes back would stand last among the takes, and not where it was; that is for a fold of all. */
function isEasy(fact: Fact, takenBack: ReadonlySet<FactId>): boolean {
  switch (fact.kind) {
    case 'fact-retracted':
    case 'take-described':
    case 'note-added':
      return true;
    case 'take-logged':
      return takenBack.has(fact.id);
    default:
      return isOnTheLine(fact);
  }
}

function takesIn(facts: readonly Fact[]): Set<TakeId> {
  const ids = new Set<TakeId>();
  for (const fact of facts) {
    if (fact.kind === 'take-logged') ids.add(fact.id);
    else if (fact.kind === 'take-described' || fact.kind === 'note-added') ids.add(fact.take);
  }
  return ids;
}

function takeAnew({ facts, takenBack }: Draft, id: TakeId): Take | undefined {
  let take: Take | undefined;
  for (const fact of facts) {
    if (takenBack.has(fact.id)) continue;
    if (fact.kind === 'take-logged' && fact.id === id) take = takeFrom(fact);
    else if (take) take = takeWith(take, fact);
  }
  return take;
}
