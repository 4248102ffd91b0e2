import type { Branch, Relaxed } from '../bounds/relaxation.ts';
import type { Chains, Reach, StageCosts } from '../network/stage-costs.ts';
import { countTracks, INPUT, PACK, SOURCE, TRACK, type VoiceMatching } from './voice-matching.ts';

/**
 * Turns the chains behind a bound into ones that share no node: tracks stay, then inputs, sources and packs
 * are assigned at the prices found by the bound. Undefined if a voice that must be recorded drops out.
 */
export function untangled(
  costs: StageCosts,
  { match, take }: VoiceMatching,
  relaxed: Relaxed,
  { barred }: Branch,
  reached: Reach,
): Chains | undefined {
  const { packs, sources, inputs, tracks } = costs;
  const chains = Int32Array.from(relaxed.chains);
  if (!isTangled(costs, chains)) return chains;
  const sharing = countTracks(chains, tracks);
  const inner = packs + sources + inputs;
  const mayPass = (voice: number, node: number) => chains[4 * voice]! >= 0 && !barred[voice * inner + node];

  const toInputs = (voice: number, input: number): number => {
    const track = chains[4 * voice + TRACK]!;
    if (!mayPass(voice, packs + sources + input) || (sharing[track]! > 1 && !costs.gangInput[input]))
      return Infinity;
    return relaxed.toInput[voice * inputs + input]! + costs.feed[input * tracks + track]!;
  };
  const toSources = (voice: number, source: number): number => {
    if (!mayPass(voice, packs + source)) return Infinity;
    return (
      relaxed.toSource[voice * sources + source]! +
      reached.cost[source * inputs + chains[4 * voice + INPUT]!]!
    );
  };
  const toPacks = (voice: number, pack: number): number => {
    if (!mayPass(voice, pack)) return Infinity;
    return costs.wear[voice * packs + pack]! + costs.tune[pack * sources + chains[4 * voice + SOURCE]!]!;
  };

  if (!match(inputs, toInputs)) return undefined;
  take(chains, INPUT);
  if (!match(sources, toSources)) return undefined;
  take(chains, SOURCE);
  if (!match(packs, toPacks)) return undefined;
  take(chains, PACK);
  return chains;
}

function isTangled({ packs, sources, inputs }: StageCosts, chains: Chains): boolean {
  return [packs, sources, inputs].some((size, layer) => {
    const used = new Uint8Array(size);
    for (let at = layer; at < chains.length; at += 4) {
      const node = chains[at]!;
      if (node < 0) continue;
      if (used[node] === 1) return true;
      used[node] = 1;
    }
    return false;
  });
}
