import { type Fact, type FactOf, isKnown, type UnknownFact } from '../../facts/fact.ts';
import type { DayId } from '../../facts/kinds/envelope.ts';
import { databaseOf } from '../../shared/ids.ts';
import { EMPTY_HEADER } from '../header.ts';
import type { Day } from '../model.ts';
import { newUpkeep } from '../upkeep-facts.ts';
import { applyStanding, type Draft, layAgain, pushFact, pushOnLine } from './draft.ts';
import { joinedTakes } from './joined-takes.ts';
import { isOnTheLine } from './line-item.ts';
import { layInOrder } from './line-order.ts';
import { Resolver } from './resolved.ts';
import { noteCounter, sortFacts } from './sorted-facts.ts';
import { EMPTY_RIG, PartsList } from './standing.ts';
import { takeBack } from './take-back.ts';

/** What a day was folded in, kept beside it so that the next fact costs no more than itself. */
const drafts = new WeakMap<Day, Draft>();

/** Folds a day from its facts, in any order, each at most once. Never throws on facts that `readFact` accepted. */
export function foldDay(id: DayId, facts: readonly (Fact | UnknownFact)[]): Day {
  const sorted = sortFacts(facts);
  const { known, unknown, takeItems, highest, lastAt } = sorted;
  const joined = joinedTakes(ofKind(sorted.standing, 'takes-joined'), (take) => takeItems.has(take));
  for (const take of joined.keys()) takeItems.get(take)!.takenBack = true;
  const draft: Draft = {
    id,
    facts: known,
    unknown,
    takenBack: sorted.takenBack.all,
    header: EMPTY_HEADER,
    voices: new Map(),
    parts: new PartsList(EMPTY_RIG),
    takes: new Map(),
    clock: null,
    upkeep: newUpkeep(),
    line: [],
    takeOrder: [],
    rolls: [],
    lastAt,
    takeItems,
    tail: new Map(),
    highest,
    order: sorted.order,
    joined,
    memory: { checkpoints: [], answersOf: {} },
    chain: 0,
    highestChain: 0,
    isShown: false,
    lastTake: undefined,
  };
  for (const fact of sorted.standing) applyStanding(draft, fact);
  const resolutions = ofKind(sorted.standing, 'conflict-resolved');
  const resolver = new Resolver(resolutions, resolutions.length > 0 ? known : [], draft.takenBack);
  layInOrder(sorted, (item) => {
    const resolved = item.takenBack ? undefined : resolver.writesOf(item.fact, draft.tail.keys());
    if (resolved) item.resolved = resolved;
    pushOnLine(draft, item);
  });
  return finished(draft);
}

const ofKind = <Kind extends Fact['kind']>(facts: readonly Fact[], kind: Kind): FactOf<Kind>[] =>
  facts.filter((fact): fact is FactOf<Kind> => fact.kind === kind);

/** Kinds that change what other facts say, which only folding anew can do. */
const CHANGES_OTHERS: ReadonlySet<Fact['kind']> = new Set([
  'fact-moved',
  'conflict-resolved',
  'takes-joined',
]);

/**
 * The day with more facts. Facts that come after all others cost themselves, and what stands on the line behind the
 * place they are put at, or behind what they take back. Moves, and facts from another phone, fold the day anew. `day`
 * must not be read afterwards.
 */
export function appendFacts(day: Day, facts: readonly (Fact | UnknownFact)[]): Day {
  const draft = drafts.get(day);
  const last = day.facts.at(-1)?.id ?? '';
  const isAfter = facts.every((fact, at) => fact.id > (facts[at - 1]?.id ?? last));
  const plain = facts.every((fact) => isKnown(fact) && !CHANGES_OTHERS.has(fact.kind));
  const anew = (): Day => foldDay(day.id, [...day.facts, ...day.unknown, ...facts]);
  if (!draft || !isAfter || !plain || !isSaidLast(draft, facts as readonly Fact[])) return anew();
  // What was resolved is worked out from the links before it, and they change.
  if (facts.some((fact) => fact.before !== undefined) && draft.line.some(({ resolved }) => resolved))
    return anew();
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
    noteCounter(draft.highest, fact.id);
    draft.order?.add(fact);
  }
  return finished(draft);
}

/** Whether these facts were said after all others: on a day of one phone by their ids, on a merged day by the clocks. */
function isSaidLast({ highest, order }: Draft, facts: readonly Fact[]): boolean {
  if (order) return facts.every((fact) => order.isLast(fact));
  return new Set([...highest.keys(), ...facts.map(({ id }) => databaseOf(id))]).size <= 1;
}

/** The last fact said goes to the end of the line or, of all that was put before one take, next to it. */
function place(draft: Draft, fact: Fact): void {
  const before = fact.before === undefined ? undefined : draft.takeItems.get(fact.before);
  if (before) layAgain(draft, before.place, [fact]);
  else pushFact(draft, fact);
}

function finished(draft: Draft): Day {
  const { parts, chain, highestChain, isShown, lastTake, ...rest } = draft;
  const day: Day = { ...rest, rig: parts.rig() };
  draft.isShown = true;
  drafts.set(day, draft);
  return day;
}

/** The number of the chain just before the item at `index` of the line: two places with one number have one chain. */
export const chainAt = (day: Day, index: number): number =>
  day.line[index]?.chainBefore ?? drafts.get(day)?.chain ?? 0;
