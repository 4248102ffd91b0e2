import { type OpenSet, placeMore } from './place-more.ts';
import { type Budget, choose, membersOf, type SetSpace } from './set-space.ts';

/** The most one rebuild may cost before the next is tried. */
const STEPS_A_REBUILD = 20_000;

export const spanOf = (khz: readonly number[]): number => (khz.at(-1) ?? 0) - (khz[0] ?? 0);

/** The lowest clean position, then the next one clean with it, and so on; undefined if out of band. */
export function greedySet(
  space: SetSpace,
  count: number,
  from: number,
  budget: Budget,
): readonly number[] | undefined {
  const members = membersOf(space, count);
  const blocked = new Uint8Array(space.khz.length);
  const chosen: number[] = [];
  for (let at = from; at < space.khz.length && chosen.length < count; at += 1) {
    if (blocked[at] !== 0) continue;
    const x = space.khz[at]!;
    chosen.push(x);
    choose(space, members, blocked, x, x, budget);
  }
  return chosen.length === count ? chosen : undefined;
}

/**
 * Looks for a narrower set by removing a few carriers, including one at an end, and placing as many again,
 * until the budget is spent or the span is down to `goalKhz`. Half the rebuilds must shrink the best set,
 * half may move to another of similar width.
 */
export function improveSet(
  space: SetSpace,
  start: readonly number[],
  goalKhz: number,
  leastMoreKhz: readonly number[],
  below: (below: number) => number,
  budget: Budget,
): readonly number[] {
  let best = start;
  let current = start;
  while (budget.left > 0 && spanOf(best) > goalKhz && start.length > 2) {
    const mustShrink = below(2) > 0;
    const base = mustShrink ? best : current;
    const widestKhz = mustShrink ? spanOf(best) - 1 : spanOf(best) + below(1 + (spanOf(best) >> 4));
    const rebuilt = rebuild(space, base, widestKhz, !mustShrink, leastMoreKhz, below, budget);
    if (!rebuilt) continue;
    current = rebuilt;
    if (spanOf(current) < spanOf(best)) best = current;
  }
  return best;
}

/**
 * Removes some carriers of a set and places others; undefined if the span or the share of the budget does not
 * allow it.
 */
function rebuild(
  space: SetSpace,
  base: readonly number[],
  widestKhz: number,
  mustDiffer: boolean,
  leastMoreKhz: readonly number[],
  below: (below: number) => number,
  budget: Budget,
): readonly number[] | undefined {
  const removed = pickRemoved(base, below);
  const kept = base.filter((khz) => !removed.includes(khz));
  const share: Budget = { left: Math.min(budget.left, STEPS_A_REBUILD) };
  const given = share.left;
  const open = openSetAround(space, kept, removed.length, widestKhz, leastMoreKhz, share);
  if (mustDiffer) open.blocked[space.khz.indexOf(removed[below(removed.length)]!)] = 1;
  const { placedKhz } = placeMore(open, share);
  budget.left -= given - share.left;
  return placedKhz && [...kept, ...placedKhz].sort((a, b) => a - b);
}

function pickRemoved(set: readonly number[], below: (below: number) => number): readonly number[] {
  const count = Math.min(set.length - 1, 2 + below(6));
  const left = [...set];
  const removed = left.splice(below(2) > 0 ? 0 : left.length - 1, 1);
  while (removed.length < count) removed.push(...left.splice(below(left.length), 1));
  return removed;
}

function openSetAround(
  space: SetSpace,
  kept: readonly number[],
  toPlace: number,
  widestKhz: number,
  leastMoreKhz: readonly number[],
  budget: Budget,
): OpenSet {
  const members = membersOf(space, kept.length + toPlace);
  const blocked = new Uint8Array(space.khz.length);
  const belowAll = space.khz[0]! - 1;
  for (const khz of kept) choose(space, members, blocked, khz, belowAll, budget);
  const keptLowKhz = kept[0]!;
  const keptHighKhz = kept.at(-1)!;
  const lowest = keptHighKhz - widestKhz - space.khz[0]!;
  return {
    space,
    members,
    blocked,
    keptLowKhz,
    keptHighKhz,
    toPlace,
    from: lowest > 0 ? (space.firstAt[lowest] ?? space.khz.length) : 0,
    widestKhz,
    leastMoreKhz,
    firstWillDo: true,
  };
}
