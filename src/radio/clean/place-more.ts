import { type Budget, choose, type Members, type SetSpace } from './set-space.ts';

/** A set under construction: what is kept of it, and how many are still to be placed. */
export interface OpenSet {
  readonly space: SetSpace;
  /** The fixed carriers and the kept ones. */
  readonly members: Members;
  /** Positions that the kept ones rule out. */
  readonly blocked: Uint8Array;
  readonly keptLowKhz: number;
  readonly keptHighKhz: number;
  readonly toPlace: number;
  /** The first position to try. */
  readonly from: number;
  /** Only sets of at most this span count. */
  readonly widestKhz: number;
  /** `leastMoreKhz[r]`: the least span that r further carriers above the last one take. */
  readonly leastMoreKhz: readonly number[];
  /** Stop at the first set found instead of looking for the narrowest. */
  readonly firstWillDo: boolean;
}

export interface Placed {
  /** The placed positions of the narrowest set found, ascending; undefined if there is none. */
  readonly placedKhz: readonly number[] | undefined;
  /** The search finished (or found one, if the first will do) instead of running out of budget. */
  readonly isComplete: boolean;
}

/**
 * Places carriers upwards by depth-first search, skipping positions ruled out by earlier ones and leaving
 * branches that cannot end within the span. Each level has its own copy of the blocked positions, so
 * backtracking costs nothing.
 */
export function placeMore(set: OpenSet, budget: Budget): Placed {
  const { space, members, toPlace, keptLowKhz, keptHighKhz } = set;
  const { khz } = space;
  const kept = members.count;
  const { blocked, next } = levelsOf(set);
  let widest = set.widestKhz;
  let best: readonly number[] | undefined;
  let level = 0;
  while (level >= 0 && budget.left > 0) {
    members.count = kept + level;
    const low = level === 0 ? keptLowKhz : Math.min(keptLowKhz, members.khz[kept]!);
    const highest = low + widest - set.leastMoreKhz[toPlace - 1 - level]!;
    const at = nextFree(khz, blocked[level]!, next[level]!, highest);
    budget.left -= 1;
    next[level] = at + 1;
    if (at < 0) {
      level -= 1;
      continue;
    }
    const x = khz[at]!;
    const span = Math.max(keptHighKhz, x) - Math.min(low, x);
    // Until the first is placed, only the kept ones bound how low the set may begin.
    if (span > widest) continue;
    if (level === toPlace - 1) {
      best = [...members.khz.subarray(kept, kept + level), x];
      widest = span - 1;
      level = set.firstWillDo ? -1 : level - 1;
      continue;
    }
    blocked[level + 1]!.set(blocked[level]!);
    budget.left -= khz.length >> 5;
    choose(space, members, blocked[level + 1]!, x, x, budget);
    level += 1;
    next[level] = at + 1;
  }
  members.count = kept;
  return { placedKhz: best, isComplete: level < 0 };
}

/** For every carrier to be placed: the positions blocked by those before it, and the next one to try. */
const levelsOf = ({
  space,
  blocked,
  toPlace,
  from,
}: OpenSet): { blocked: Uint8Array[]; next: Int32Array } => ({
  blocked: Array.from({ length: toPlace }, (_, level) =>
    level === 0 ? blocked : new Uint8Array(space.khz.length),
  ),
  next: new Int32Array(toPlace).fill(from),
});

/** The first unblocked position from `from` that is not above `highestKhz`, or -1. */
function nextFree(khz: Int32Array, blocked: Uint8Array, from: number, highestKhz: number): number {
  for (let at = from; at < khz.length && khz[at]! <= highestKhz; at += 1) if (blocked[at] === 0) return at;
  return -1;
}
