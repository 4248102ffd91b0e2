import { fail, ok, type Result } from '../../shared/result.ts';
import type { ChainNetwork } from '../network/chain-network.ts';
import {
  countByLevel,
  gangingUnits,
  type Levels,
  movingUnits,
  type OrderUnits,
  priorityLevels,
  recordingUnits,
} from '../network/order-units.ts';
import { type Chains, stageCosts } from '../network/stage-costs.ts';
import { unmovedChains } from '../network/unmoved-chains.ts';
import type { Steps } from '../steps.ts';
import { type FoundPlan, searchChains } from './chain-search.ts';
import { inReadingOrder } from './reading-order.ts';

/** The cost of a plan, most important order first, compared left to right; smaller is better. */
export interface PlanCost {
  /** Needed voices left out, counted for each priority from the most important down. */
  readonly leftOut: readonly number[];
  /** Needed voices recorded in a gang, likewise. */
  readonly ganged: readonly number[];
  /** Packs moved or newly fitted, weighted. */
  readonly packs: number;
  /** Retunes, throws, re-plugs and re-routes, weighted. */
  readonly bench: number;
  /** Needed voices that are not on the track they had last time. */
  readonly newTracks: number;
  /** Below the five orders: packs that must come off somebody, and changes without cost in the fourth. */
  readonly extras: number;
}

/** Which orders are proven best; never one after an unproven one. */
export interface PlanExact {
  readonly leftOut: boolean;
  readonly ganged: boolean;
  readonly packs: boolean;
  readonly bench: boolean;
  readonly newTracks: boolean;
}

export interface BestChains {
  readonly chains: Chains;
  /** The positions of the shared selectors. */
  readonly positions: Int32Array;
  /** Index of the network path of each voice, -1 if it is left out. */
  readonly path: Int32Array;
  readonly cost: PlanCost;
  /** No plan is better than this; equals the cost as far as the orders are exact. */
  readonly bound: PlanCost;
  readonly exact: PlanExact;
  /** How many bounds were computed. */
  readonly effort: number;
}

export type TooLarge = { readonly code: 'plan-too-large'; readonly voices: number };

/** The upper two orders: who is recorded, and who of them in a gang. */
export interface RecordedChains {
  readonly levels: Levels;
  readonly first: OrderUnits;
  readonly second: OrderUnits;
  readonly recording: FoundPlan;
  readonly ganging: FoundPlan;
  /** Counts by level, as found. */
  readonly leftOut: readonly number[];
  readonly ganged: readonly number[];
}

/** The first two stages alone. Fails if the numbers would exceed 53 bits. */
export function* recordedChains(
  network: ChainNetwork,
  budget: number,
): Steps<Result<RecordedChains, TooLarge>> {
  const levels = priorityLevels(network);
  const first = recordingUnits(network, levels);
  if (!first.fits) return fail({ code: 'plan-too-large', voices: network.voices.length });
  const costs = stageCosts(network, first.units);
  const stay = Int32Array.from(network.banks, ({ current }) => current);
  const recording = yield* searchChains(costs, unmovedChains(costs), stay, budget);
  const leftOut = leftOutByLevel(levels, recording.chains);
  const second = gangingUnits(levels, leftOut);
  const ganging = yield* goOn(network, second, recording, budget);
  const ganged = gangedByLevel(levels, network, ganging.chains);
  return ok({ levels, first, second, recording, ganging, leftOut, ganged });
}

/**
 * The best chains for the needed voices, one stage for each of the upper two orders and one for the rest;
 * every stage keeps what earlier stages have proven. Fails if the numbers would exceed 53 bits.
 */
export function* bestChains(network: ChainNetwork, budget: number): Steps<Result<BestChains, TooLarge>> {
  const recorded = yield* recordedChains(network, budget);
  if (!recorded.ok) return recorded;
  const { levels, ganging, leftOut, ganged } = recorded.value;
  const third = movingUnits(network, levels, leftOut, ganged);
  if (!third.fits) return fail({ code: 'plan-too-large', voices: network.voices.length });
  const found = yield* goOn(network, third, ganging, budget);
  const costs = stageCosts(network, third.units);
  const chains = inReadingOrder(costs, found.chains, found.reached, found.positions);
  const moving = { ...found, chains };
  return ok({
    chains: moving.chains,
    positions: moving.positions,
    path: pathsOf(moving, network.inputs.length),
    ...judge(recorded.value, third, moving, network),
    effort: moving.effort,
  });
}

/** The next stage continues from the last one's result and remaining budget. */
function* goOn(
  network: ChainNetwork,
  { units }: OrderUnits,
  from: FoundPlan,
  budget: number,
): Steps<FoundPlan> {
  const costs = stageCosts(network, units);
  const found = yield* searchChains(costs, from.chains, from.positions, budget - from.effort);
  return { ...found, effort: from.effort + found.effort };
}

const leftOutByLevel = (levels: Levels, chains: Chains) =>
  countByLevel(levels, (voice) => chains[4 * voice]! < 0);

const gangedByLevel = (levels: Levels, { tracks }: ChainNetwork, chains: Chains) => {
  const isGanged = inGang(chains, tracks.length);
  return countByLevel(levels, (voice) => isGanged[voice] === 1);
};

/** 1 for each voice that shares its track with another one. */
export function inGang(chains: Chains, tracks: number): Uint8Array {
  const sharing = new Int32Array(tracks);
  for (let at = 3; at < chains.length; at += 4) if (chains[at]! >= 0) sharing[chains[at]!]! += 1;
  return Uint8Array.from({ length: chains.length / 4 }, (_value, voice) => {
    const track = chains[4 * voice + 3]!;
    return track >= 0 && sharing[track]! > 1 ? 1 : 0;
  });
}

const pathsOf = ({ chains, reached }: FoundPlan, inputs: number): Int32Array =>
  Int32Array.from({ length: chains.length / 4 }, (_value, voice) =>
    chains[4 * voice]! < 0 ? -1 : reached.path[chains[4 * voice + 1]! * inputs + chains[4 * voice + 2]!]!,
  );

/** If a stage is unproven, so are the orders below it, with bounds of zero. */
function judge(stages: RecordedChains, third: OrderUnits, moving: FoundPlan, network: ChainNetwork) {
  const { levels, first, second, recording, ganging } = stages;
  const lowest = (units: OrderUnits, { bound }: FoundPlan) => units.read(Math.max(0, Math.ceil(bound)));
  const lower = (digits: readonly number[]) => digits.slice(levels.count) as Four;
  const leftOut = leftOutByLevel(levels, moving.chains);
  const ganged = gangedByLevel(levels, network, moving.chains);
  const digits = third.read(moving.cost);
  const reached = lowest(third, moving);
  const isHeld = digits.every((digit, at) => at >= levels.count || digit === reached[at]);
  const [packs, bench, newTracks, extras] = lower(digits);
  const [leastPacks, leastBench, leastTracks, leastExtras] = isHeld ? lower(reached) : [0, 0, 0, 0];
  const outExact = recording.bound >= recording.cost;
  const gangExact = outExact && ganging.bound >= ganging.cost;
  const packsExact = gangExact && leastPacks >= packs;
  const benchExact = packsExact && leastBench >= bench;
  const tracksExact = benchExact && leastTracks >= newTracks;
  return {
    cost: { leftOut, ganged, packs, bench, newTracks, extras },
    bound: {
      leftOut: outExact ? leftOut : lowest(first, recording),
      ganged: gangExact ? ganged : outExact ? lowest(second, ganging) : leftOut.map(() => 0),
      packs: gangExact ? leastPacks : 0,
      bench: packsExact ? leastBench : 0,
      newTracks: benchExact ? leastTracks : 0,
      extras: tracksExact ? leastExtras : 0,
    },
    exact: {
      leftOut: outExact,
      ganged: gangExact,
      packs: packsExact,
      bench: benchExact,
      newTracks: tracksExact,
    },
  };
}

type Four = [number, number, number, number];
