import { chainFlow } from '../bounds/chain-flow.ts';
import { narrowPlace } from '../bounds/narrow-place.ts';
import { type Branch, OPEN, type Relaxed, relaxation, SINGLE } from '../bounds/relaxation.ts';
import { dearer, snapped, type TollClimb, tollClimb } from '../bounds/toll-climb.ts';
import type { Chains, StageCosts } from '../network/stage-costs.ts';
import type { Steps } from '../steps.ts';
import { bestKnown, type KnownPlan } from './best-known.ts';
import { barredCount, breaksTrack, gangedLike, held, split } from './chain-branching.ts';

export interface FoundPlan extends KnownPlan {
  /** No plan costs less than this; equals the cost if the plan is proven best. */
  readonly bound: number;
  /** How many bounds were computed. */
  readonly effort: number;
}

/** A branch that may still hold something better, and how far its bound has been raised. */
interface Part {
  branch: Branch;
  readonly climb: TollClimb;
  bound: number;
  prices: Float64Array;
  climbsLeft: number;
  idleClimbs: number;
}

/** Rounds of moving tolls at a time, and at most how often before a split, while each still helps. */
const ROUNDS = 8;
const CLIMBS = 14;
/** How often a narrow place is made dearer before that, at most. */
const NARROW_PLACES = 3;
const CLIMBS_BELOW = 2;
const IDLE_CLIMBS = 3;
const FINE_EFFORT = 60;
/** Finding what voices cannot do without costs three more passes over every voice. */
const HOLD_EFFORT = 2;

/**
 * The cheapest chains by branch and bound, most promising branch first, from a feasible plan. Computes at
 * most `budget` bounds, so the answer never depends on the machine's speed; when they run out, `bound` says
 * how far from the best it may be.
 */
export function* searchChains(
  costs: StageCosts,
  start: Chains,
  startPositions: Int32Array,
  budget: number,
): Steps<FoundPlan> {
  const { relax, forced } = relaxation(costs);
  const known = bestKnown(costs, start, startPositions);
  const open: Part[] = [];
  let effort = 0;
  let floor = Infinity;

  /** Differences below the grain are worth some effort, but not all of it. */
  const level = (): number => known.level(effort < FINE_EFFORT ? 1 : costs.grain);
  /** No branch with such a bound could be better. */
  const isPruned = (bound: number): boolean => bound >= level();

  const look = (branch: Branch, prices: Float64Array): Relaxed => {
    effort += 1;
    return relax(branch, prices);
  };

  const add = (branch: Branch, prices: Float64Array, bound: number, climbsLeft: number): void => {
    open.push({ branch, prices, bound, climbsLeft, climb: tollClimb(costs, prices), idleClimbs: 0 });
  };

  function* plant(): Steps<void> {
    const root: Branch = {
      barred: costs.barredAtStart,
      mode: Uint8Array.from(costs.gangSlots, (slots) => (slots > 1 ? OPEN : SINGLE)),
      positions: new Int32Array(costs.network.banks.length).fill(-1),
      mustBeIn: new Uint8Array(costs.voices),
    };
    const free = look(root, new Float64Array(costs.packs + costs.sources + costs.inputs));
    if (!isPruned(free.bound)) known.offerRelaxed(root, free, true);
    if (isPruned(free.bound)) {
      floor = free.bound;
      return;
    }
    yield;
    const flow = chainFlow(costs, root);
    known.offer(flow.chains, startPositions);
    // Improving a plan never shares a new track, so new gangs are tried here.
    for (const branch of gangedLike(costs, root, flow.chains)) {
      yield;
      if (!isPruned(free.bound)) known.offer(chainFlow(costs, branch).chains, startPositions);
    }
    add(root, bestOf(root, flow.prices), free.bound, CLIMBS);
  }

  const bestOf = (branch: Branch, candidates: readonly Float64Array[]): Float64Array => {
    const tried = candidates.map((prices) => ({ prices, bound: look(branch, prices).bound }));
    return tried.reduce((kept, other) => (other.bound > kept.bound ? other : kept)).prices;
  };

  /** Some rounds of moving tolls, offering plans found on the way; returns the best bound's chains. */
  const climb = (part: Part): Relaxed => {
    let last = look(part.branch, part.prices);
    let kept = last;
    const tryOut = (prices: Float64Array): boolean => {
      last = look(part.branch, prices);
      if (last.bound <= kept.bound) return false;
      kept = last;
      part.prices = prices;
      if (!isPruned(last.bound)) known.offerRelaxed(part.branch, last, false);
      return true;
    };
    const canRise = (): boolean =>
      effort < budget && !isPruned(kept.bound) && !breaksTrack(costs, part.branch, last);
    const tollNarrowPlace = (): boolean => {
      effort += 1;
      const narrow = narrowPlace(costs, part.branch, kept);
      if (!narrow || !tryOut(dearer(part.prices, narrow, known.plan().cost - kept.bound))) return false;
      part.climb.goOnFrom(part.prices);
      return true;
    };
    if (!isPruned(last.bound)) known.offerRelaxed(part.branch, last, true);
    for (let place = 0; place < NARROW_PLACES && canRise() && tollNarrowPlace(); ) place += 1;
    last = kept;
    for (let round = 0; round < ROUNDS && canRise(); round += 1) {
      const next = part.climb.step(last, known.plan().cost);
      if (!next) break;
      part.climb.learn(tryOut(next));
      if (round === ROUNDS - 1 && !isPruned(kept.bound)) tryOut(snapped(costs, part.prices));
    }
    return kept;
  };

  /** Holds voices to the nodes they cannot do without; undefined if that is infeasible or holds none. */
  const hold = (part: Part): Branch | undefined => {
    const relaxed = look(part.branch, part.prices);
    effort += HOLD_EFFORT;
    floor = Math.min(floor, level());
    return held(costs, part.branch, forced(relaxed, level() - relaxed.bound));
  };

  const close = (part: Part): void => {
    open.splice(open.indexOf(part), 1);
  };

  /** Takes the newest of the most promising parts; climbs, and splits it when climbing stops helping. */
  const takeOne = (): void => {
    const part = open.reduce((kept, other) => (other.bound <= kept.bound ? other : kept));
    const before = part.bound;
    const relaxed = climb(part);
    part.bound = Math.max(before, Math.ceil(relaxed.bound));
    part.climbsLeft -= 1;
    part.idleClimbs = part.bound > before ? 0 : part.idleClimbs + 1;
    if (isPruned(part.bound)) {
      floor = Math.min(floor, part.bound);
      close(part);
      return;
    }
    const isBroken = breaksTrack(costs, part.branch, relaxed);
    if (!isBroken) {
      const branch = hold(part);
      if (!branch) {
        close(part);
        return;
      }
      const isNarrower = barredCount(branch) > barredCount(part.branch);
      part.branch = branch;
      if (isNarrower || (part.climbsLeft > 0 && part.idleClimbs < IDLE_CLIMBS)) return;
    }
    close(part);
    const parts = split(costs, part.branch, relaxed);
    if (parts.length === 0) floor = Math.min(floor, part.bound);
    for (const branch of [...parts].reverse()) {
      const isThrown = branch.positions !== part.branch.positions;
      const prices = isThrown
        ? bestOf(branch, [part.prices, ...chainFlow(costs, branch).prices])
        : part.prices;
      add(branch, prices, part.bound, isBroken || isThrown ? CLIMBS : CLIMBS_BELOW);
    }
  };

  yield;
  known.offer(start, startPositions);
  if (!isPruned(0)) yield* plant();
  while (open.length > 0 && effort < budget) {
    yield;
    takeOne();
  }
  const plan = known.plan();
  const bound = open.reduce((least, part) => Math.min(least, part.bound), Math.min(floor, plan.cost));
  return { ...plan, bound, effort };
}
