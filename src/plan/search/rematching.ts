import { type Chains, chainsCost, isBarred, type Reach, type StageCosts } from '../network/stage-costs.ts';
import { countTracks, type VoiceMatching } from './voice-matching.ts';

/** Chains that cost no more than the ones given. */
export type Improve = (chains: Chains, reached: Reach, positions: Int32Array) => Chains;

/** The layers of a chain, as indexes into `Chains`. */
const PACK = 0;
const SOURCE = 1;
const INPUT = 2;
const TRACK = 3;

/**
 * Improves a plan: every layer, and every cut between two layers, is rematched until nothing gains. Each step
 * is an exact assignment, the whole is not; the search proves how good it is.
 */
export function rematching(costs: StageCosts, { match, columnOf }: VoiceMatching): Improve {
  const { voices, packs, sources, inputs, tracks } = costs;
  const layerSize = [packs, sources, inputs, tracks] as const;

  /** The link into a layer: from the voice (or the node before) to the node. */
  const link = (reached: Reach, layer: number, from: number, to: number): number => {
    if (layer === PACK) return costs.wear[from * packs + to]!;
    if (layer === SOURCE) return costs.tune[from * sources + to]!;
    if (layer === INPUT) return reached.cost[from * inputs + to]!;
    return costs.feed[from * tracks + to]!;
  };

  const before = (chains: Chains, voice: number, layer: number): number =>
    layer === PACK ? voice : chains[4 * voice + layer - 1]!;

  const linksBetween = (
    chains: Chains,
    reached: Reach,
    voice: number,
    first: number,
    after: number,
  ): number => {
    let sum = 0;
    for (let layer = first; layer < after; layer += 1) {
      sum += link(reached, layer, before(chains, voice, layer), chains[4 * voice + layer]!);
    }
    return sum;
  };

  /** The voice's cost at the end of a chain: for the track, and for sharing it. */
  const endCost = (voice: number, input: number, track: number, sharing: Int32Array): number => {
    const end = costs.end[voice * tracks + track]!;
    if (sharing[track]! < 2) return end;
    return costs.gangInput[input] ? end + costs.gang[voice]! : Infinity;
  };

  /** The tracks available, with their multiplicity: shared ones stay shared. */
  const trackPlaces = (sharing: Int32Array): number[] => {
    const places: number[] = [];
    sharing.forEach((count, track) => {
      const most = count > 1 ? Math.min(costs.gangSlots[track]!, voices) : 1;
      for (let place = 0; place < most; place += 1) places.push(track);
    });
    return places;
  };

  /** Every recorded voice may take any node of one layer; the rest of its chain stays. */
  const rematchLayer = (chains: Chains, reached: Reach, layer: number): Chains | undefined => {
    const sharing = countTracks(chains, tracks);
    const places = layer === TRACK ? trackPlaces(sharing) : undefined;
    const rest = Float64Array.from({ length: voices }, (_value, voice) =>
      chains[4 * voice]! < 0
        ? Infinity
        : linksBetween(chains, reached, voice, PACK, layer) +
          linksBetween(chains, reached, voice, layer + 2, TRACK + 1),
    );
    const found = match(places?.length ?? layerSize[layer]!, (voice, column) => {
      if (rest[voice] === Infinity) return Infinity;
      const node = places ? places[column]! : column;
      const into = link(reached, layer, before(chains, voice, layer), node);
      const onward = places ? 0 : link(reached, layer + 1, node, chains[4 * voice + layer + 1]!);
      if (into + onward === Infinity) return Infinity;
      const source = layer === SOURCE ? node : chains[4 * voice + SOURCE]!;
      const input = layer === INPUT ? node : chains[4 * voice + INPUT]!;
      if (isBarred(costs, voice, source, input)) return Infinity;
      const track = places ? node : chains[4 * voice + TRACK]!;
      return rest[voice]! + into + onward + endCost(voice, input, track, sharing);
    });
    if (!found) return undefined;
    const changed = Int32Array.from(chains);
    for (let voice = 0; voice < voices; voice += 1) {
      const column = columnOf(voice);
      if (column < 0) changed.fill(-1, 4 * voice, 4 * voice + 4);
      else changed[4 * voice + layer] = places ? places[column]! : column;
    }
    return changed;
  };

  /** Every chain is cut before one layer, and heads and tails are rejoined. */
  const rematchCut = (chains: Chains, reached: Reach, layer: number): Chains | undefined => {
    const sharing = countTracks(chains, tracks);
    const tails: number[] = [];
    for (let voice = 0; voice < voices; voice += 1) if (chains[4 * voice]! >= 0) tails.push(voice);
    const headCost = Float64Array.from({ length: voices }, (_value, voice) =>
      layer > PACK && chains[4 * voice]! < 0 ? Infinity : linksBetween(chains, reached, voice, PACK, layer),
    );
    const tailCost = tails.map((tail) => linksBetween(chains, reached, tail, layer + 1, TRACK + 1));
    const found = match(tails.length, (voice, column) => {
      if (headCost[voice] === Infinity) return Infinity;
      const tail = tails[column]!;
      const joint = link(reached, layer, before(chains, voice, layer), chains[4 * tail + layer]!);
      if (joint === Infinity) return Infinity;
      const source = chains[4 * (layer <= SOURCE ? tail : voice) + SOURCE]!;
      const input = chains[4 * (layer <= INPUT ? tail : voice) + INPUT]!;
      if (isBarred(costs, voice, source, input)) return Infinity;
      const end = endCost(voice, input, chains[4 * tail + TRACK]!, sharing);
      return headCost[voice]! + joint + tailCost[column]! + end;
    });
    if (!found) return undefined;
    const changed = Int32Array.from(chains);
    for (let voice = 0; voice < voices; voice += 1) {
      const column = columnOf(voice);
      const from = 4 * (tails[column] ?? 0);
      if (column < 0) changed.fill(-1, 4 * voice, 4 * voice + 4);
      else changed.set(chains.subarray(from + layer, from + 4), 4 * voice + layer);
    }
    return changed;
  };

  return (start, reached, positions) => {
    let chains = start;
    let cost = chainsCost(costs, chains, reached, positions);
    for (let gained = true; gained; ) {
      gained = false;
      for (const step of [rematchLayer, rematchCut]) {
        for (let layer = PACK; layer <= TRACK; layer += 1) {
          const changed = step(chains, reached, layer);
          const price = changed ? chainsCost(costs, changed, reached, positions) : Infinity;
          if (!changed || price >= cost) continue;
          chains = changed;
          cost = price;
          gained = true;
        }
      }
    }
    return chains;
  };
}
