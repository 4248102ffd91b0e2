import { type FactId, FewIds } from '../../shared/ids.ts';
import type { TakeId } from '../model.ts';
import type { MutableLineItem } from './line-item.ts';

/** Where something was moved, by which fact: just before a take, or with null back to its origin. */
export type LineMove =
  | { readonly by: FactId; readonly item: MutableLineItem; readonly before: TakeId }
  | { readonly by: FactId; readonly target: FactId; readonly before: TakeId | null };

/** Items for the line, in the order they were recorded. */
interface Unordered {
  readonly items: readonly MutableLineItem[];
  readonly takeItems: ReadonlyMap<TakeId, MutableLineItem>;
  readonly moves: readonly LineMove[];
}

interface Placement {
  readonly before: MutableLineItem;
  /** The placement's number, in the order they were recorded. */
  readonly rank: number;
}

/** What was placed before a take, in order of placing. */
type Placements = Map<MutableLineItem, Placement>;

/**
 * Puts the items in the day's order: as recorded, but anything placed before a take comes just before it, and
 * later placements after earlier ones. A retracted take keeps its place.
 */
export function appendInOrder(all: Unordered, append: (item: MutableLineItem) => void): void {
  const placements = withoutCircles(placementsOf(all));
  const placedBefore = new Map<MutableLineItem, MutableLineItem[]>();
  for (const [item, { before }] of placements) {
    const group = placedBefore.get(before);
    if (group) group.push(item);
    else placedBefore.set(before, [item]);
  }
  // Looked up by object: most are in neither map, and hashing their ids to find out would be slow.
  for (const item of all.items) {
    if (placements.has(item)) continue;
    if (placedBefore.has(item)) appendWithFirst(item, placedBefore, append);
    else append(item);
  }
}

function placementsOf({ items, takeItems, moves }: Unordered): Placements {
  const placements: Placements = new Map();
  const itemOf = itemsMoved(items, moves);
  for (const [rank, one] of moves.entries()) {
    const item = 'item' in one ? one.item : itemOf.get(one.target);
    const before = one.before === null ? null : takeItems.get(one.before);
    if (!item || before === undefined || before === item) continue;
    // Re-added, since it was placed later than what is there already, even if it was there before.
    placements.delete(item);
    if (before) placements.set(item, { before, rank });
  }
  return placements;
}

/** The items that are moved, by fact id: few of a long day, whose ids would take long to hash. */
function itemsMoved(
  items: readonly MutableLineItem[],
  moves: readonly LineMove[],
): ReadonlyMap<FactId, MutableLineItem> {
  const targets = new FewIds(items.length);
  for (const move of moves) if ('target' in move) targets.add(move.target);
  if (targets.all.size === 0) return new Map();
  return new Map(items.filter(({ fact }) => targets.has(fact.id)).map((item) => [item.fact.id, item]));
}

/** Two phones can place two takes before each other; the earlier placement is then dropped. */
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

/** Depth first with its own stack: a foreign file may nest placements as deep as it has takes. */
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
