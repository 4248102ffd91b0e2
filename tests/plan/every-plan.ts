import type { PlanPath, PlanProblem, PlanVoice } from '../../src/plan/plan-problem.ts';
import type { PlanCost } from '../../src/plan/search/best-chains.ts';

/** One voice's whole chain, or what is missing of it. */
export interface Chain {
  readonly voice: PlanVoice;
  readonly transmitter?: string;
  readonly path: PlanPath;
  readonly track: string;
}

/** The five orders of a cost, without what only breaks ties below them. */
export const fiveOrders = (list: readonly number[]): number[] => list.slice(0, -1);

/** The cost as one list, most important first, what only breaks ties last. */
export const asList = (cost: PlanCost): number[] => [
  ...cost.leftOut,
  ...cost.ganged,
  cost.packs,
  cost.bench,
  cost.newTracks,
  cost.extras,
];

export const compare = (a: readonly number[], b: readonly number[]): number => {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at < 0 ? 0 : a[at]! - b[at]!;
};

/** What a set of chains costs, said once more and quite differently from the planner: straight from the rules. */
export function costOfChains(
  problem: PlanProblem,
  chains: readonly Chain[],
  needed = problem.voices.filter((voice) => voice.needed),
): number[] {
  const { weights } = problem;
  const everyNeeded = problem.voices.filter((voice) => voice.needed);
  const priorities = [...new Set(everyNeeded.map(({ priority }) => priority))].sort((a, b) => a - b);
  const users = (track: string) => chains.filter((chain) => chain.track === track);
  const count = (test: (voice: PlanVoice) => boolean) =>
    priorities.map((priority) => needed.filter((voice) => voice.priority === priority && test(voice)).length);
  const chainOf = (voice: PlanVoice) => chains.find((chain) => chain.voice === voice);
  const leftOut = count((voice) => !chainOf(voice));
  const ganged = count((voice) => users(chainOf(voice)?.track ?? '').length > 1);
  let packs = 0;
  let bench = 0;
  let extras = 0;
  let newTracks = 0;
  const change = (weight: number) => {
    bench += weight;
    if (weight === 0) extras += 1;
  };
  const positions = new Map<string, string>();
  for (const { voice, transmitter: id, path, track } of chains) {
    const transmitter = problem.transmitters.find((other) => other.id === id);
    const wearer = problem.voices.find((other) => other.id === transmitter?.wornBy);
    if (transmitter && !wearer) packs += weights.fit;
    else if (wearer && wearer !== voice) {
      packs += wearer.needed || wearer.done ? weights.move : weights.borrow;
      extras += 1;
    }
    const channel = problem.channels.find((other) => other.id === path.source);
    if (channel && channel.tunedTo !== id) change(channel.weight ?? weights.retune);
    if (!path.plugged) change(path.weight ?? weights.replug);
    if (path.selector) positions.set(path.selector.id, path.selector.position);
    const input = problem.inputs.find((other) => other.id === path.input)!;
    if (input.track !== track) change(input.weight ?? weights.route);
  }
  for (const selector of problem.selectors) {
    if ((positions.get(selector.id) ?? selector.position) !== selector.position) {
      change(selector.weight ?? weights.throwSelector);
    }
  }
  for (const voice of needed)
    if (voice.lastTrack && chainOf(voice)?.track !== voice.lastTrack) newTracks += 1;
  return [...leftOut, ...ganged, packs, bench, newTracks, extras];
}

/** Every chain the rig could give a voice, looked at alone. */
function chainsFor(problem: PlanProblem, voice: PlanVoice): Chain[] {
  const { hardline, mayWear = hardline === undefined, pinnedTransmitter: pin } = voice;
  const usable = problem.transmitters
    .filter(({ out, id }) => !out && (pin ?? id) === id)
    .filter(({ id }) => problem.voices.every((other) => other === voice || other.pinnedTransmitter !== id))
    .map(({ id }) => id);
  const isWired = hardline !== undefined && !(mayWear && pin !== undefined);
  const packs = [...(mayWear ? usable : []), ...(isWired ? [undefined] : [])];
  const found: Chain[] = [];
  for (const path of problem.paths) {
    if (path.out) continue;
    const channel = problem.channels.find(({ id }) => id === path.source);
    if (channel ? channel.out : path.source !== hardline) continue;
    if ((voice.pinnedChannel ?? path.source) !== path.source) continue;
    const input = problem.inputs.find(({ id }) => id === path.input);
    if (!input || input.out || (voice.pinnedInput ?? input.id) !== input.id) continue;
    for (const track of problem.tracks) {
      if (!track.iso || track.out || (voice.pinnedTrack ?? track.id) !== track.id) continue;
      if (input.track !== track.id && !input.mayFeed?.includes(track.id)) continue;
      for (const transmitter of packs) {
        if ((transmitter === undefined) !== (channel === undefined)) continue;
        const canTune = channel?.canTune?.includes(transmitter!) ?? true;
        if (channel && channel.tunedTo !== transmitter && !canTune) continue;
        found.push({ voice, ...(transmitter && { transmitter }), path, track: track.id });
      }
    }
  }
  return found;
}

/** Whether the chain can stand beside the others. */
function fits(problem: PlanProblem, others: readonly Chain[], chain: Chain): boolean {
  return others.every((other) => {
    if (chain.transmitter && chain.transmitter === other.transmitter) return false;
    if (chain.path.source === other.path.source || chain.path.input === other.path.input) return false;
    const selector = chain.path.selector;
    const known = problem.selectors.some(({ id }) => id === selector?.id);
    if (
      known &&
      selector?.id === other.path.selector?.id &&
      selector?.position !== other.path.selector?.position
    ) {
      return false;
    }
    if (chain.track !== other.track) return true;
    const gangable = [chain, other].every(
      ({ path, voice }) => !voice.alone && problem.inputs.find(({ id }) => id === path.input)!.canGang,
    );
    return gangable && problem.tracks.find(({ id }) => id === chain.track)!.gangAllowed;
  });
}

/**
 * The cheapest plan of all, by trying every one. A part of a plan that already costs more than a whole one is not
 * completed, since every order only grows along the way (voices not yet tried are left out of the count so far).
 */
export function bestOfEveryPlan(problem: PlanProblem): number[] {
  const needed = problem.voices.filter((voice) => voice.needed).sort((a, b) => a.priority - b.priority);
  // Cheap chains first, so that a good plan is met early and more of the others need no completing.
  const options = needed.map((voice) => {
    const priced = chainsFor(problem, voice).map((chain) => ({
      chain,
      cost: costOfChains(problem, [chain]),
    }));
    return priced.sort((a, b) => compare(a.cost, b.cost)).map(({ chain }) => chain);
  });
  let best: number[] = costOfChains(problem, []);
  const walk = (at: number, chains: readonly Chain[]): void => {
    const soFar = costOfChains(problem, chains, needed.slice(0, at));
    if (at === needed.length) {
      if (compare(soFar, best) < 0) best = soFar;
      return;
    }
    if (compare(soFar, best) >= 0) return;
    for (const option of options[at]!) {
      if (fits(problem, chains, option)) walk(at + 1, [...chains, option]);
    }
    walk(at + 1, chains);
  };
  walk(0, []);
  return best;
}
