import { knew } from '../../facts/kinds/envelope.ts';
import type { FactId } from '../../shared/ids.ts';
import { linksAt, writesOfItem } from '../chain/links.ts';
import type { Day, Fact, LineItem, TakeId, Write } from '../model.ts';
import type { SaidOrder } from '../said-order.ts';

/** A change and a take of two phones, so close in time that it could have been either way round, and it matters. */
export interface OrderUnsure {
  readonly kind: 'order-unsure';
  readonly change: FactId;
  readonly take: TakeId;
  /** How it stands now: the change holds for the take. */
  readonly isBefore: boolean;
}

/** Both orders of a change on one phone and a take on another, where neither knew of the other and the clocks cannot tell. */
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

/** Changes about as late as the take at this place, said where nobody knew of it. */
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

/** Whether a change made anything different from what was before it. */
function isOther(day: Day, change: LineItem): boolean {
  const before = linksAt(day, change.place);
  return writesOfItem(change, before.keys()).some(
    ([name, value]) => JSON.stringify(before.get(name)?.value) !== JSON.stringify(value),
  );
}

/** What somebody has placed since, which is decided for every take, or said to be right as it stands before one. */
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

/** The name under which it is said that a change and a take stand in the right order. */
export const ORDER_LINK = 'order';
