import { knew } from '../../facts/kinds/envelope.ts';
import type { FactId } from '../../shared/ids.ts';
import { linksAt, writesOfItem } from '../chain/links.ts';
import type { Day, Fact, LineItem, TakeId, Write } from '../model.ts';
import type { SaidOrder } from '../said-order.ts';

/** A change and a take from two phones, so close in time that the order is uncertain, and it matters. */
export interface OrderUnsure {
  readonly kind: 'order-unsure';
  readonly change: FactId;
  readonly take: TakeId;
  /** The current order: the change holds for the take. */
  readonly isBefore: boolean;
}

/** A change and a take from two phones whose order neither the facts nor the clocks can tell. */
export function orderUnsure(day: Day): OrderUnsure[] {
  const { order } = day;
  if (!order) return [];
  const isDecided = decidedOrders(day);
  const found: OrderUnsure[] = [];
  for (const [at, item] of day.line.entries()) {
    if (item.fact.kind !== 'take-logged' || item.takenBack || item.fact.before !== undefined) continue;
    for (const change of near(day, order, at)) {
      const isBefore = change.place < at;
      if (isDecided(change.fact.id, item.fact.id) || !isOther(day, change)) continue;
      found.push({ kind: 'order-unsure', change: change.fact.id, take: item.fact.id, isBefore });
    }
  }
  return found;
}

/** Changes close in time to the take at this place, whose authors did not know of it. */
function near(day: Day, order: SaidOrder, at: number): LineItem[] {
  const take = day.line[at]!.fact;
  const found: LineItem[] = [];
  for (const step of [-1, 1]) {
    for (let place = at + step; place >= 0 && place < day.line.length; place += step) {
      const item = day.line[place]!;
      if (Math.abs(order.timeOf(item.fact.id) - order.timeOf(take.id)) > order.doubtBetween(item.fact, take))
        break;
      if (item.fact.before === undefined && writesAt(day, item).length > 0 && isUnknown(item.fact, take))
        found.push(item);
    }
  }
  return found;
}

const writesAt = (day: Day, item: LineItem): readonly Write[] =>
  item.fact.kind === 'take-logged' ? [] : writesOfItem(item, linksAt(day, item.place).keys());

const isUnknown = (one: Fact, other: Fact): boolean => !knew(one, other.id) && !knew(other, one.id);

/** Whether a change made any difference to what was before it. */
function isOther(day: Day, change: LineItem): boolean {
  const before = linksAt(day, change.place);
  return writesOfItem(change, before.keys()).some(
    ([name, value]) => JSON.stringify(before.get(name)?.value) !== JSON.stringify(value),
  );
}

/** Orders already decided: a change placed since is decided for every take, a confirmed one for that take. */
function decidedOrders(day: Day): (change: FactId, take: TakeId) => boolean {
  const placed = new Set<FactId>();
  const right = new Set<string>();
  for (const fact of day.facts) {
    if (day.takenBack.has(fact.id)) continue;
    if (fact.kind === 'fact-moved') placed.add(fact.target);
    if (fact.kind === 'conflict-resolved' && fact.link === ORDER_LINK) right.add(fact.among.join(' '));
  }
  return (change, take) => placed.has(change) || right.has(`${change} ${take}`);
}

/** The key for confirming that a change and a take are in the right order. */
export const ORDER_LINK = 'order';
