import { greedySet, spanOf } from './improve-set.ts';
import { rulerSets } from './ruler-sets.ts';
import { type Budget, choose, membersOf, type SetSpace } from './set-space.ts';

const GREEDY_STARTS = 24;
const RULERS_TRIED = 6;

/** Sets to improve on: greedy ones from several starts, and known rulers placed where they fit. */
export function narrowestFirstSet(
  space: SetSpace,
  count: number,
  stepKhz: number,
  budget: Budget,
): readonly number[] | undefined {
  const stride = Math.max(1, Math.ceil(space.khz.length / GREEDY_STARTS));
  const sets = Array.from({ length: GREEDY_STARTS }, (_, start) =>
    budget.left > 0 ? greedySet(space, count, start * stride, budget) : undefined,
  );
  sets.push(rulerInBand(space, count, stepKhz, budget));
  return sets.reduce((best, set) => (set && (!best || spanOf(set) < spanOf(best)) ? set : best), undefined);
}

/** The narrowest known ruler, in units of the widest third-order guard, that is clean somewhere in the band. */
function rulerInBand(
  space: SetSpace,
  count: number,
  stepKhz: number,
  budget: Budget,
): readonly number[] | undefined {
  const { twoToneThirdKhz, threeToneThirdKhz } = space.guards;
  const guardKhz = Math.max(twoToneThirdKhz, threeToneThirdKhz, stepKhz);
  const unitKhz = Math.ceil(guardKhz / stepKhz) * stepKhz;
  const widest = (space.khz.at(-1)! - space.khz[0]!) / unitKhz;
  for (const ruler of rulerSets(count, Math.ceil(space.spacingKhz / unitKhz), RULERS_TRIED)) {
    if (ruler.at(-1)! > widest) return undefined;
    for (const start of space.khz) {
      const set = ruler.map((mark) => start + mark * unitKhz);
      if (budget.left > 0 && set.every((khz) => isPosition(space, khz)) && isClean(space, set, budget))
        return set;
    }
  }
  return undefined;
}

const isPosition = ({ khz, firstAt }: SetSpace, at: number): boolean => {
  const first = firstAt[at - khz[0]!];
  return first !== undefined && khz[first] === at;
};

function isClean(space: SetSpace, set: readonly number[], budget: Budget): boolean {
  const members = membersOf(space, set.length);
  const blocked = new Uint8Array(space.khz.length);
  return set.every((x) => {
    if (blocked[space.firstAt[x - space.khz[0]!]!] !== 0) return false;
    choose(space, members, blocked, x, x, budget);
    return true;
  });
}
