import { fail, ok, type Result } from '../../shared/result.ts';
import type { Move, RecordedVoice } from '../moves.ts';
import { type ChainNetwork, chainNetwork } from '../network/chain-network.ts';
import type { PlanProblem } from '../plan-problem.ts';
import {
  type BestChains,
  bestChains,
  type PlanCost,
  type PlanExact,
  type TooLarge,
} from '../search/best-chains.ts';
import type { Steps } from '../steps.ts';
import { type LeftOutVoice, whyLeftOut } from './left-out.ts';
import { moveList } from './move-list.ts';
import { faultOf, type ProblemFault } from './problem-faults.ts';

/** What to do for the next setup, and the result. */
export interface Plan {
  readonly moves: readonly Move[];
  /** Needed voices that are recorded, in gangs too, most important first. */
  readonly recorded: readonly RecordedVoice[];
  readonly leftOut: readonly LeftOutVoice[];
  readonly cost: PlanCost;
  /** Proven: no plan is better than this. It equals the cost as far as `exact` says so. */
  readonly bound: PlanCost;
  readonly exact: PlanExact;
  /** How many bounds it took, for the bench. */
  readonly effort: number;
}

export type PlanTrouble = ProblemFault | TooLarge;

export type Planned = Result<Plan, PlanTrouble>;

/**
 * The best plan for the people needed next: every order strictly before the next (see `PlanCost`), and the
 * same answer for the same question, whatever the order of the lists. A plan that was applied and asked again
 * has no moves. With one free pack and one voice that needs it, the moves are one `fit` and perhaps one
 * `retune`. Pausable.
 */
export function* planSteps(problem: PlanProblem, budget: number): Steps<Planned> {
  const fault = faultOf(problem);
  if (fault) return fail(fault);
  const network = chainNetwork(problem);
  const best = yield* bestChains(network, budget);
  if (!best.ok) return best;
  const order = byImportance(network);
  const recorded = order.flatMap((voice) => recordedVoice(network, best.value, voice));
  const leftOut = order
    .filter((voice) => best.value.chains[4 * voice]! < 0)
    .map((voice) => ({
      voice: network.voices[voice]!.id,
      why: whyLeftOut(network, best.value.chains, voice),
    }));
  const { cost, bound, exact, effort } = best.value;
  return ok({ moves: moveList(problem, recorded), recorded, leftOut, cost, bound, exact, effort });
}

const byImportance = ({ voices }: ChainNetwork): number[] =>
  voices.map((_voice, at) => at).sort((a, b) => voices[a]!.priority - voices[b]!.priority || a - b);

function recordedVoice(network: ChainNetwork, { chains, path }: BestChains, voice: number): RecordedVoice[] {
  const [pack, source, input, track] = chains.subarray(4 * voice, 4 * voice + 4);
  if (pack! < 0) return [];
  const { id, lastTrack } = network.voices[voice]!;
  const transmitter = network.packs[pack!]?.id;
  const from = network.sources[source!]!;
  const trackId = network.tracks[track!]!.id;
  const gangedWith = network.voices
    .filter((_other, at) => at !== voice && chains[4 * at + 3] === track)
    .map((other) => other.id);
  return [
    {
      voice: id,
      ...(transmitter !== undefined && { transmitter }),
      source: typeof from === 'string' ? from : from.id,
      path: network.paths[path[voice]!]!.path.id,
      input: network.inputs[input!]!.id,
      track: trackId,
      gangedWith,
      keepsTrack: (lastTrack ?? trackId) === trackId,
    },
  ];
}
