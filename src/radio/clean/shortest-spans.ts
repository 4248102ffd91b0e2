import { placeMore } from './place-more.ts';
import { type Budget, choose, membersOf, type SetSpace } from './set-space.ts';

/** The narrowest sets of 2, 3, 4 … carriers in an empty range, as far as the budget allowed to prove them. */
export interface ShortestSpans {
  /** `leastMoreKhz[r]`: the least span of r carriers above another; proven, or summed from proven ones. */
  readonly leastMoreKhz: readonly number[];
  /** The proven narrowest set of the whole count, if the search got that far. */
  readonly set: readonly number[] | undefined;
  /** Proven: so many carriers do not fit into the range at all. */
  readonly doesNotFit: boolean;
}

/** The narrowest set of `count` beginning at one position, no wider than `widestKhz`. */
export function narrowestFrom(
  space: SetSpace,
  from: number,
  count: number,
  widestKhz: number,
  leastMoreKhz: readonly number[],
  budget: Budget,
): { set: readonly number[] | undefined; isComplete: boolean } {
  const x = space.khz[from]!;
  if (count === 1) return { set: [x], isComplete: true };
  const members = membersOf(space, count);
  const blocked = new Uint8Array(space.khz.length);
  choose(space, members, blocked, x, x, budget);
  const { placedKhz, isComplete } = placeMore(
    {
      space,
      members,
      blocked,
      keptLowKhz: x,
      keptHighKhz: x,
      toPlace: count - 1,
      from: from + 1,
      widestKhz,
      leastMoreKhz,
      firstWillDo: false,
    },
    budget,
  );
  return { set: placedKhz && [x, ...placedKhz], isComplete };
}

/**
 * Solves 2 carriers, then 3, and so on up to `count`: each answer bounds the next search, since any run of a
 * clean set is a clean set. The space must be empty and even, so that every set can begin at its first
 * position.
 */
export function shortestSpans(
  space: SetSpace,
  count: number,
  greedy: readonly number[],
  budget: Budget,
): ShortestSpans {
  const widestKhz = space.khz.at(-1)! - space.khz[0]!;
  const leastMoreKhz = [0];
  let set: readonly number[] | undefined = [space.khz[0]!];
  for (let size = 2; size <= count && set; size += 1) {
    const asGreedy = greedy[size - 1];
    const widest = asGreedy === undefined ? widestKhz : asGreedy - greedy[0]!;
    fillUp(leastMoreKhz, count);
    const narrowest = narrowestFrom(space, 0, size, widest, leastMoreKhz, budget);
    if (narrowest.isComplete && !narrowest.set) return { leastMoreKhz, set: undefined, doesNotFit: true };
    set = narrowest.isComplete ? narrowest.set : undefined;
    if (set) leastMoreKhz[size - 1] = set.at(-1)! - set[0]!;
  }
  fillUp(leastMoreKhz, count);
  return { leastMoreKhz, set, doesNotFit: false };
}

/** Unproven spans are at least the sum of their parts. */
function fillUp(leastMoreKhz: number[], count: number): void {
  for (let more = 1; more <= count; more += 1)
    for (let part = 1; part <= more; part += 1)
      leastMoreKhz[more] = Math.max(
        leastMoreKhz[more] ?? 0,
        part < more ? leastMoreKhz[part]! + leastMoreKhz[more - part]! : 0,
      );
}
