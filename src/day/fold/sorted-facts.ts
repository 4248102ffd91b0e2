import { type Fact, isKnown, type UnknownFact } from '../../facts/fact.ts';
import { counterOf, databaseOf, type FactId, FewIds, isOfDatabase } from '../../shared/ids.ts';
import type { TakeId } from '../model.ts';
import { SaidOrder } from '../said-order.ts';
import { leftOutOf } from './left-out.ts';
import { isOnTheLine, type MutableLineItem, newLineItem } from './line-item.ts';
import type { LineMove } from './line-order.ts';

/** The facts of a day by how they are used, each list in recorded order. */
export interface SortedFacts {
  readonly known: Fact[];
  readonly unknown: UnknownFact[];
  readonly takenBack: FewIds;
  /** Changes and takes. */
  readonly items: MutableLineItem[];
  readonly takeItems: Map<TakeId, MutableLineItem>;
  /** What holds for the whole day, takes, and facts about takes; without retracted ones. */
  readonly wholeDay: Fact[];
  readonly moves: LineMove[];
  /** The highest counter of every database that wrote any of them. */
  readonly highest: Map<string, number>;
  /** UTC ms of the latest known fact; 0 if there is none. */
  readonly lastAt: number;
  /** When each fact was recorded, if several phones wrote the day; with one phone, ids decide. */
  readonly order: SaidOrder | null;
}

type Sorting = Omit<SortedFacts, 'known' | 'lastAt' | 'order'> & { lastAt: number };

/**
 * Sorts facts, given in any order, in one pass: a long day exceeds the processor's cache, and another pass
 * would cost as much as the work in it. Goes from the highest id down, because a retraction can itself be
 * retracted and only ever names lower ids: when a fact comes up, it is known whether it was retracted.
 */
export function sortFacts(facts: readonly (Fact | UnknownFact)[]): SortedFacts {
  const unknown: UnknownFact[] = [];
  const takenBack = new FewIds(facts.length);
  const sorted: Sorting = {
    unknown,
    takenBack,
    items: [],
    takeItems: new Map(),
    wholeDay: [],
    moves: [],
    highest: new Map(),
    lastAt: 0,
  };
  const isLeftOut = leftOutOf(facts);
  let [counterAbove, idAbove] = [Number.POSITIVE_INFINITY, ''];
  let database = '';
  for (let at = facts.length - 1; at >= 0; at -= 1) {
    const fact = facts[at]!;
    const { id } = fact;
    const counter = counterOf(id);
    if (counter > counterAbove || (counter === counterAbove && id > idAbove))
      return sortFacts(facts.toSorted(byId));
    [counterAbove, idAbove] = [counter, id];
    // Runs of facts come from one database, highest first.
    if (database === '' || !isOfDatabase(id, database)) {
      database = databaseOf(id);
      noteCounter(sorted.highest, id);
    }
    if (isLeftOut?.(id)) takenBack.add(id);
    if (isKnown(fact)) sortFact(sorted, fact, takenBack.has(id, counter));
    else unknown.push(fact);
  }
  for (const list of [unknown, sorted.items, sorted.wholeDay, sorted.moves]) list.reverse();
  const order = sorted.highest.size > 1 ? new SaidOrder(facts) : null;
  if (order) sortByTime(sorted, order);
  return { ...sorted, order, known: unknown.length === 0 ? ([...facts] as Fact[]) : facts.filter(isKnown) };
}

/** Ids break ties: the lists come in order of ids. */
function sortByTime({ items, wholeDay, moves }: Sorting, order: SaidOrder): void {
  const timeOf = (id: FactId): number => order.timeOf(id);
  items.sort((a, b) => timeOf(a.fact.id) - timeOf(b.fact.id));
  wholeDay.sort((a, b) => timeOf(a.id) - timeOf(b.id));
  moves.sort((a, b) => timeOf(a.by) - timeOf(b.by));
}

function sortFact(sorted: Sorting, fact: Fact, isTakenBack: boolean): void {
  const { takenBack, items, takeItems, wholeDay, moves } = sorted;
  sorted.lastAt = Math.max(sorted.lastAt, fact.at);
  if (isOnTheLine(fact)) {
    const item = newLineItem(fact, isTakenBack);
    items.push(item);
    if (fact.before !== undefined) moves.push({ by: fact.id, item, before: fact.before });
    if (fact.kind !== 'take-logged') return;
    takeItems.set(fact.id, item);
    if (!isTakenBack) wholeDay.push(fact);
  } else if (!isTakenBack) {
    if (fact.kind === 'fact-retracted') {
      for (const target of fact.targets) if (target < fact.id) takenBack.add(target);
    } else if (fact.kind === 'fact-moved') moves.push({ by: fact.id, target: fact.target, before: fact.to });
    else wholeDay.push(fact);
  }
}

const byId = (a: { id: FactId }, b: { id: FactId }): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** Raises a database's highest counter to that of this id. */
export function noteCounter(highest: Map<string, number>, id: FactId): void {
  const database = databaseOf(id);
  highest.set(database, Math.max(highest.get(database) ?? 0, counterOf(id)));
}
