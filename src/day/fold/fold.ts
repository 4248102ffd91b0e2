import { type Fact, type FactOf, isKnown, type UnknownFact } from '../../facts/fact.ts';
import type { DayId } from '../../facts/kinds/envelope.ts';
import { databaseOf } from '../../shared/ids.ts';
import { EMPTY_HEADER } from '../header.ts';
import type { Day } from '../model.ts';
import { newUpkeep } from '../upkeep-facts.ts';
import { applyWholeDay, type FoldState, pushFact, pushOnLine, rebuildLine } from './fold-state.ts';
import { joinedTakes } from './joined-takes.ts';
import { isOnTheLine } from './line-item.ts';
import { appendInOrder } from './line-order.ts';
import { EMPTY_RIG, PartsList } from './parts-list.ts';
import { Resolver } from './resolved.ts';
import { noteCounter, sortFacts } from './sorted-facts.ts';
import { takeBack } from './take-back.ts';

/** The draft behind each day, so that adding a fact costs no more than that fact. */
const states = new WeakMap<Day, FoldState>();

/** Folds a day from its facts, in any order, each once. Never throws on facts `readFact` accepted. */
export function foldDay(id: DayId, facts: readonly (Fact | UnknownFact)[]): Day {
  const sorted = sortFacts(facts);
  const { known, unknown, takeItems, highest, lastAt } = sorted;
  const joined = joinedTakes(ofKind(sorted.wholeDay, 'takes-joined'), (take) => takeItems.has(take));
  for (const take of joined.keys()) takeItems.get(take)!.takenBack = true;
  const state: FoldState = {
    id,
    facts: known,
    unknown,
    takenBack: sorted.takenBack.all,
    header: EMPTY_HEADER,
    voices: new Map(),
    scenes: new Map(),
    parts: new PartsList(EMPTY_RIG),
    takes: new Map(),
    clock: null,
    wrap: undefined,
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
    hasLeftOut: known.some(({ kind }) => kind === 'writer-removed'),
    chain: 0,
    highestChain: 0,
    isShown: false,
    lastTake: undefined,
  };
  for (const fact of sorted.wholeDay) applyWholeDay(state, fact);
  const resolutions = ofKind(sorted.wholeDay, 'conflict-resolved');
  const resolver = new Resolver(resolutions, resolutions.length > 0 ? known : [], state.takenBack);
  appendInOrder(sorted, (item) => {
    const resolved = item.takenBack ? undefined : resolver.writesOf(item.fact, state.tail.keys());
    if (resolved) item.resolved = resolved;
    pushOnLine(state, item);
  });
  return finished(state);
}

const ofKind = <Kind extends Fact['kind']>(facts: readonly Fact[], kind: Kind): FactOf<Kind>[] =>
  facts.filter((fact): fact is FactOf<Kind> => fact.kind === kind);

/** Kinds that change what other facts mean, so the day must be folded again. */
const CHANGES_OTHERS: ReadonlySet<Fact['kind']> = new Set([
  'fact-moved',
  'conflict-resolved',
  'takes-joined',
  'writer-admitted',
  'writer-removed',
]);

/**
 * The day with more facts. Facts after all others only cost themselves, plus the line behind where they
 * are placed or what they retract. Moves, and facts from another phone, fold the day again. `day` must not be
 * read afterwards.
 */
export function appendFacts(day: Day, facts: readonly (Fact | UnknownFact)[]): Day {
  const state = states.get(day);
  const last = day.facts.at(-1)?.id ?? '';
  const isAfter = facts.every((fact, at) => fact.id > (facts[at - 1]?.id ?? last));
  const plain = facts.every((fact) => isKnown(fact) && !CHANGES_OTHERS.has(fact.kind));
  const anew = (): Day => foldDay(day.id, [...day.facts, ...day.unknown, ...facts]);
  if (!state || !isAfter || !plain || state.hasLeftOut || !isSaidLast(state, facts as readonly Fact[]))
    return anew();
  // Resolutions depend on the links before them, which would change.
  if (facts.some((fact) => fact.before !== undefined) && state.line.some(({ resolved }) => resolved))
    return anew();
  const known = state.facts.length;
  for (const fact of facts as readonly Fact[]) {
    state.facts.push(fact);
    if (fact.kind === 'fact-retracted' && !takeBack(state, fact)) {
      state.facts.length = known;
      return anew();
    }
    state.lastAt = Math.max(state.lastAt, fact.at);
    applyWholeDay(state, fact);
    if (isOnTheLine(fact)) place(state, fact);
    noteCounter(state.highest, fact.id);
    state.order?.add(fact);
  }
  return finished(state);
}

/** Whether these facts come after all others: by ids on a day of one phone, by the clocks on a merged day. */
function isSaidLast({ highest, order }: FoldState, facts: readonly Fact[]): boolean {
  if (order) return facts.every((fact) => order.isLast(fact));
  return new Set([...highest.keys(), ...facts.map(({ id }) => databaseOf(id))]).size <= 1;
}

/** A new fact goes to the end of the line, or closest to its take among those placed before it. */
function place(state: FoldState, fact: Fact): void {
  const before = fact.before === undefined ? undefined : state.takeItems.get(fact.before);
  if (before) rebuildLine(state, before.place, [fact]);
  else pushFact(state, fact);
}

function finished(state: FoldState): Day {
  const { parts, hasLeftOut: _, chain, highestChain, isShown, lastTake, ...rest } = state;
  const day: Day = { ...rest, rig: parts.rig() };
  state.isShown = true;
  states.set(day, state);
  return day;
}

/** The chain number just before the item at `index`: equal numbers mean equal chains. */
export const chainAt = (day: Day, index: number): number =>
  day.line[index]?.chainBefore ?? states.get(day)?.chain ?? 0;
