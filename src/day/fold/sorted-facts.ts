import { type Fact, isKnown, type UnknownFact } from '../../facts/fact.ts';
import { counterOf, databaseOf, type FactId, FewIds, isOfDatabase } from '../../shared/ids.ts';
import type { TakeId } from '../model.ts';
import { SaidOrder } from '../said-order.ts';
import { isOnTheLine, type MutableLineItem, newLineItem } from './line-item.ts';
import type { LineMove } from './line-order.ts';

/** The facts of a day by what is done with them, each list in the order in which things were said. */
export interface SortedFacts {
  readonly known: Fact[];
  readonly unknown: UnknownFact[];
  readonly takenBack: FewIds;
  /** Changes and takes. */
  readonly items: MutableLineItem[];
  readonly takeItems: Map<TakeId, MutableLineItem>;
  /** What holds for the whole day, takes, and what is said of one take; without what is taken back. */
  readonly wholeDay: Fact[];
  readonly moves: LineMove[];
  /** For every database that wrote any of them, its highest counter. */
  readonly highest: Map<string, number>;
  /** UTC ms of the latest moment at which anything known was said; 0 before that. */
  readonly lastAt: number;
  /** When each was said, on a day that several phones wrote; on a day of one, the ids say it. */
  readonly order: SaidOrder | null;
}

type Sorting = Omit<SortedFacts, 'known' | 'lastAt' | 'order'> & { lastAt: number };

/**
 * Sorts facts, which may come in any order, in one pass: a long day is larger than the processor's cache, and another
 * pass over it costs as much as the work done there. It goes from the highest id down, because a retraction can itself
 * be taken back and only ever speaks of lower ids: whether a fact is taken back is known when it is come to.
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
  let [counterAbove, idAbove] = [Number.POSITIVE_INFINITY, ''];
  let database = '';
  for (let at = facts.length - 1; at >= 0; at -= 1) {
    const fact = facts[at]!;
    const { id } = fact;
    const counter = counterOf(id);
    if (counter > counterAbove || (counter === counterAbove && id > idAbove))
      return sortFacts(facts.toSorted(byId));
    [counterAbove, idAbove] = [counter, id];
    // Many facts in a row are of one database, and the highest comes first.
    if (database === '' || !isOfDatabase(id, database)) {
      database = databaseOf(id);
      noteCounter(sorted.highest, id);
    }
    if (isKnown(fact)) sortFact(sorted, fact, takenBack.has(id, counter));
    else unknown.push(fact);
  }
  for (const list of [unknown, sorted.items, sorted.wholeDay, sorted.moves]) list.reverse();
  const order = sorted.highest.size > 1 ? new SaidOrder(facts) : null;
  if (order) sortByTime(sorted, order);
  return { ...sorted, order, known: unknown.length === 0 ? ([...facts] as Fact[]) : facts.filter(isKnown) };
}

/** Ids order what was said at one time: the lists come in the order of the ids. */
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

/** Notes that a database has come to the counter of this id. */
export function noteCounter(highest: Map<string, number>, id: FactId): void {
  const database = databaseOf(id);
  highest.set(database, Math.max(highest.get(database) ?? 0, counterOf(id)));
}
