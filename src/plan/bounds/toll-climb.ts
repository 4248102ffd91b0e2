import type { StageCosts } from '../network/stage-costs.ts';
import type { NarrowPlace } from './narrow-place.ts';
import type { Relaxed } from './relaxation.ts';

export interface TollClimb {
  /** The next tolls; undefined if every node is used at most once and every toll is paid. */
  step(last: Relaxed, target: number): Float64Array | undefined;
  /** Continues from these tolls. */
  goOnFrom(prices: Float64Array): void;
  /** Reports whether the step helped; after many failures, steps get shorter. */
  learn(helped: boolean): void;
}

const MOMENTUM = 0.8;
const PATIENCE = 25;
/** Tolls are whole 64ths, so that sums of them with whole costs stay exact. */
const FINENESS = 64;

/**
 * Subgradient steps for the tolls: up where a node is used twice, down where a toll goes unpaid, scaled by
 * the gap to the target (Polyak 1969), with some of the last step carried on (Camerini, Fratta and Maffioli
 * 1975). Both from memory; correctness does not depend on them, since any tolls give a true bound.
 */
export function tollClimb(costs: StageCosts, from: Float64Array): TollClimb {
  const { packs, sources } = costs;
  let prices = from;
  let direction = new Float64Array(from.length);
  let reach = 1;
  let failures = 0;

  const step = ({ chains, tolls, bound }: Relaxed, target: number): Float64Array | undefined => {
    const slope = new Float64Array(from.length).fill(-1);
    for (let at = 0; at < chains.length; at += 4) {
      if (chains[at]! < 0) continue;
      slope[chains[at]!]! += 1;
      slope[packs + chains[at + 1]!]! += 1;
      slope[packs + sources + chains[at + 2]!]! += 1;
    }
    let isFlat = true;
    let square = 0;
    direction = slope.map((value, node) => {
      const steep = value < 0 && tolls[node] === 0 ? 0 : value;
      if (steep !== 0) isFlat = false;
      const next = steep + MOMENTUM * direction[node]!;
      const kept = next < 0 && prices[node] === 0 ? 0 : next;
      square += kept * kept;
      return kept;
    });
    if (isFlat || square === 0) return undefined;
    const length = (reach * (target - bound)) / square;
    prices = prices.map((price, node) => Math.max(0, fine(price + length * direction[node]!)));
    return prices;
  };

  const learn = (helped: boolean): void => {
    failures = helped ? 0 : failures + 1;
    if (failures < PATIENCE) return;
    failures = 0;
    reach /= 2;
  };

  const goOnFrom = (now: Float64Array): void => {
    prices = now;
  };

  return { step, goOnFrom, learn };
}

const fine = (toll: number): number => Math.round(toll * FINENESS) / FINENESS;

/** Raises tolls where too many have to pass: with the same voices, the bound would rise by the whole gap. */
export function dearer(prices: Float64Array, { isIn, tooMany }: NarrowPlace, gap: number): Float64Array {
  return prices.map((price, node) => (isIn[node] ? price + fine(gap / tooMany) : price));
}

/** Tolls rounded to whole units of the fourth order: the best tolls are sums of link costs. */
export const snapped = ({ unit }: StageCosts, prices: Float64Array): Float64Array =>
  prices.map((price) => Math.round(price / unit) * unit);
