import type { Branch, Relaxed } from '../bounds/relaxation.ts';
import { type Chains, chainsCost, type Reach, reach, type StageCosts } from '../network/stage-costs.ts';
import { rematching } from './rematching.ts';
import { untangled } from './untangled.ts';
import { voiceMatching } from './voice-matching.ts';

export interface KnownPlan {
  readonly chains: Chains;
  /** The positions of the shared selectors. */
  readonly positions: Int32Array;
  readonly reached: Reach;
  readonly cost: number;
}

export interface BestKnown {
  plan(): KnownPlan;
  /**
   * Keeps the chains if they cost less than the best known; improves them as far as possible while they miss
   * the goal.
   */
  offer(chains: Chains | undefined, positions: Int32Array, goal?: number): void;
  /** The same for the chains behind a bound, untangled; improved only if asked. */
  offerRelaxed(branch: Branch, relaxed: Relaxed, better: boolean): void;
  /** A cost of at least this is no improvement by the grain or more. */
  level(grain: number): number;
}

/** The best plan found so far, starting from a feasible one. */
export function bestKnown(costs: StageCosts, start: Chains, startPositions: Int32Array): BestKnown {
  const { banks, paths } = costs.network;
  const matching = voiceMatching(costs);
  const improve = rematching(costs, matching);
  const reached = reach(costs, startPositions);
  const cost = chainsCost(costs, start, reached, startPositions);
  let best: KnownPlan = { chains: start, positions: startPositions, reached, cost };

  /** Undecided shared selectors go where the first chain through them needs them, or stay. */
  const decide = (positions: Int32Array, chains: Chains, { path }: Reach): Int32Array => {
    const decided = Int32Array.from(positions);
    for (let at = 0; at < chains.length; at += 4) {
      if (chains[at]! < 0) continue;
      const { bank, position } = paths[path[chains[at + 1]! * costs.inputs + chains[at + 2]!]!]!;
      if (bank >= 0 && decided[bank]! < 0) decided[bank] = position;
    }
    return decided.map((position, bank) => (position < 0 ? banks[bank]!.current : position));
  };

  const keep = (chains: Chains, positions: Int32Array, there: Reach): void => {
    if (chainsCost(costs, chains, there, positions) >= best.cost) return;
    const needed = decide(new Int32Array(banks.length).fill(-1), chains, there);
    const reachedThen = reach(costs, needed);
    best = {
      chains,
      positions: needed,
      reached: reachedThen,
      cost: chainsCost(costs, chains, reachedThen, needed),
    };
  };

  const offer = (chains: Chains | undefined, positions: Int32Array, goal = -Infinity): void => {
    if (!chains) return;
    const there = reach(costs, positions);
    keep(chains, positions, there);
    if (best.cost > goal) keep(improve(chains, there, positions), positions, there);
  };

  const offerRelaxed = (branch: Branch, relaxed: Relaxed, better: boolean): void => {
    const positions = decide(branch.positions, relaxed.chains, relaxed.reached);
    const goal = better ? relaxed.bound : Infinity;
    offer(untangled(costs, matching, relaxed, branch, reach(costs, positions)), positions, goal);
  };

  return {
    plan: () => best,
    offer,
    offerRelaxed,
    level: (grain) => best.cost - (best.cost % grain),
  };
}
