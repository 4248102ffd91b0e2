import type { FactId } from '../../shared/ids.ts';
import type { TakeId } from '../model.ts';
import type { MutableLineItem } from './line-item.ts';

/** What was said of where something stands: said `by` a fact, just before a take or, with null, where it was said. */
export type LineMove =
  | { readonly by: FactId; readonly item: MutableLineItem; readonly before: TakeId }
  | { readonly by: FactId; readonly target: FactId; readonly before: TakeId | null };

/** What belongs on the line, in the order in which it was said. */
interface Unordered {
  readonly items: readonly MutableLineItem[];
  readonly takeItems: ReadonlyMap<TakeId, MutableLineItem>;
  readonly moves: readonly LineMove[];
}

interface Placement {
  readonly before: MutableLineItem;
  /** Which of all placements this was, in the order in which they were said. */
  readonly rank: number;
}

/** What was put before a take, in the order in which it was put there. */
type Placements = Map<MutableLineItem, Placement>;

/**
 * Appends the items in the order of the day: as things were said, but whatever was placed before a take stands just before
 * it; among several before one take, the later said stands later. A take that was taken back still holds its place.
 */
export function appendInOrder(all: Unordered, append: (item: MutableLineItem) => void): void {
  const placements = withoutCircles(placementsOf(all));
  const placedBefore = new Map<MutableLineItem, MutableLineItem[]>();
  for (const [item, { before }] of placements) {
    const group = placedBefore.get(before);
    if (group) group.push(item);
    else placedBefore.set(before, [item]);
  }
  // Looked up as objects: most are in neither map, and their ids need not be hashed to tell.
  for (const item of all.items) {
    if (placements.has(item)) continue;
    if (placedBefore.has(item)) appendWithFirst(item, placedBefore, append);
    else append(item);
  }
}

function placementsOf({ items, takeItems, moves }: Unordered): Placements {
  const placements: Placements = new Map();
  const itemOf = itemFinder(items);
  for (const [rank, one] of moves.entries()) {
    const item = 'item' in one ? one.item : itemOf(one.target);
    const before = one.before === null ? null : takeItems.get(one.before);
    if (!item || before === undefined || before === item) continue;
    // Said later than what is there already, even where it was there itself.
    placements.delete(item);
    if (before) placements.set(item, { before, rank });
  }
  return placements;
}

/** Items by the ids of their facts, which are listed when the first is asked for: on most days none is moved. */
function itemFinder(items: readonly MutableLineItem[]): (id: FactId) => MutableLineItem | undefined {
  let byId: Map<FactId, MutableLineItem> | undefined;
  return (id) => {
    byId ??= new Map(items.map((item) => [item.fact.id, item]));
    return byId.get(id);
  };
}

/** Two phones can put two takes before each other; then the placement said first gives way. */
function withoutCircles(placements: Placements): Placements {
  const clear = new Set<MutableLineItem>();
  for (const start of placements.keys()) {
    const trail = new Set<MutableLineItem>();
    let at: MutableLineItem | undefined = start;
    while (at !== undefined && placements.has(at) && !clear.has(at)) {
      if (trail.has(at)) {
        const earliest = [...circleFrom(at, placements)].reduce((a, b) =>
          placements.get(a)!.rank < placements.get(b)!.rank ? a : b,
        );
        placements.delete(earliest);
        break;
      }
      trail.add(at);
      at = placements.get(at)!.before;
    }
    for (const item of trail) clear.add(item);
  }
  return placements;
}

function* circleFrom(start: MutableLineItem, placements: Placements): Generator<MutableLineItem> {
  let at = start;
  do {
    yield at;
    at = placements.get(at)!.before;
  } while (at !== start);
}

/** Depth first with a stack of its own: a stranger's file may nest placements as deep as it has takes. */
function appendWithFirst(
  root: MutableLineItem,
  placedBefore: ReadonlyMap<MutableLineItem, readonly MutableLineItem[]>,
  append: (item: MutableLineItem) => void,
): void {
  const stack = [{ item: root, ready: false }];
  while (stack.length > 0) {
    const { item, ready } = stack.pop()!;
    const first = placedBefore.get(item);
    if (ready || !first) {
      append(item);
      continue;
    }
    stack.push({ item, ready: true });
    for (const child of first.toReversed()) stack.push({ item: child, ready: false });
  }
}
