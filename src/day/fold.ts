import type { DayId } from '../facts/envelope.ts';
import { type Fact, isKnown, type UnknownFact } from '../facts/fact.ts';
import { counterOf, databaseOf, type FactId } from '../shared/ids.ts';
import { applyStanding, type Draft, layAgain, pushOnLine } from './draft.ts';
import { isOnTheLine, lineOrder } from './line-order.ts';
import type { Day } from './model.ts';
import { factsTakenBack } from './retractions.ts';
import { EMPTY_HEADER, EMPTY_RIG, PartsList } from './standing.ts';
import { takeBack } from './take-back.ts';
import { newUpkeep } from './upkeep-facts.ts';

/** What a day was folded in, kept beside it so that the next fact costs no more than itself. */
const drafts = new WeakMap<Day, Draft>();

/** Folds a day from its facts, in any order, each at most once. Never throws on facts that `readFact` accepted. */
export function foldDay(id: DayId, facts: readonly (Fact | UnknownFact)[]): Day {
  const known = inOrder(facts.filter(isKnown));
  const draft: Draft = {
    id,
    facts: known,
    unknown: inOrder(facts.filter((fact): fact is UnknownFact => !isKnown(fact))),
    takenBack: factsTakenBack(known),
    header: EMPTY_HEADER,
    voices: new Map(),
    parts: new PartsList(EMPTY_RIG),
    takes: new Map(),
    clock: null,
    upkeep: newUpkeep(),
    line: [],
    takeOrder: [],
    rolls: [],
    lastAt: 0,
    placeOf: new Map(),
    tail: new Map(),
    highest: new Map(),
    memory: { checkpoints: [], answersOf: {} },
    chain: 0,
    highestChain: 0,
  };
  noteWriters(draft, draft.facts);
  noteWriters(draft, draft.unknown);
  for (const fact of draft.facts) {
    draft.lastAt = Math.max(draft.lastAt, fact.at);
    if (!draft.takenBack.has(fact.id)) applyStanding(draft, fact);
  }
  for (const fact of lineOrder(draft.facts, draft.takenBack)) pushOnLine(draft, fact);
  return finished(draft);
}

/**
 * The day with more facts. Facts that come after all others cost themselves, and what stands on the line behind the
 * place they are put at, or behind what they take back. Moves, and facts from another phone, fold the day anew. `day`
 * must not be read afterwards.
 */
export function appendFacts(day: Day, facts: readonly (Fact | UnknownFact)[]): Day {
  const draft = drafts.get(day);
  const last = day.facts.at(-1)?.id ?? '';
  const isAfter = facts.every((fact, at) => fact.id > (facts[at - 1]?.id ?? last));
  const plain = facts.every((fact) => isKnown(fact) && fact.kind !== 'fact-moved');
  const anew = (): Day => foldDay(day.id, [...day.facts, ...day.unknown, ...facts]);
  if (!draft || !isAfter || !plain) return anew();
  const known = draft.facts.length;
  for (const fact of facts as readonly Fact[]) {
    draft.facts.push(fact);
    if (fact.kind === 'fact-retracted' && !takeBack(draft, fact)) {
      draft.facts.length = known;
      return anew();
    }
    draft.lastAt = Math.max(draft.lastAt, fact.at);
    applyStanding(draft, fact);
    if (isOnTheLine(fact)) place(draft, fact);
  }
  noteWriters(draft, facts);
  return finished(draft);
}

/** The last fact said goes to the end of the line or, of all that was put before one take, next to it. */
function place(draft: Draft, fact: Fact): void {
  const at = fact.before === undefined ? undefined : draft.placeOf.get(fact.before);
  if (at === undefined || draft.line[at]!.fact.kind !== 'take-logged') pushOnLine(draft, fact);
  else layAgain(draft, at, [fact]);
}

const byId = (a: { id: FactId }, b: { id: FactId }): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** The facts in the order of their ids, as which a database gives them anyway. */
function inOrder<T extends { readonly id: FactId }>(facts: T[]): T[] {
  const isSorted = facts.every(({ id }, at) => at === 0 || facts[at - 1]!.id <= id);
  return isSorted ? facts : facts.sort(byId);
}

/** Notes the highest counter of each database. Many facts in a row are of one, and the last of these says it. */
function noteWriters({ highest }: Draft, facts: readonly { readonly id: FactId }[]): void {
  for (const [at, { id }] of facts.entries()) {
    const database = databaseOf(id);
    const next = facts[at + 1];
    if (next && databaseOf(next.id) === database) continue;
    highest.set(database, Math.max(highest.get(database) ?? 0, counterOf(id)));
  }
}

function finished(draft: Draft): Day {
  const { parts, chain, highestChain, ...rest } = draft;
  const day: Day = { ...rest, rig: parts.rig() };
  drafts.set(day, draft);
  return day;
}

/** The number of the chain just before the item at `index` of the line: two places with one number have one chain. */
export const chainAt = (day: Day, index: number): number =>
  day.line[index]?.chainBefore ?? drafts.get(day)?.chain ?? 0;
