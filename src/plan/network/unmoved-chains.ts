import type { ChainNetwork } from './chain-network.ts';
import { type Chains, isBarred, type StageCosts } from './stage-costs.ts';

/** The chains that stand already and can stand together, most important voice first: a plan without moves. */
export function unmovedChains(costs: StageCosts): Chains {
  const { network, tracks } = costs;
  const chains = new Int32Array(4 * costs.voices).fill(-1);
  const taken = new Set<string>();
  const order = network.voices.map((_voice, at) => at).sort((a, b) => costs.levelOf[a]! - costs.levelOf[b]!);
  for (const voice of order) {
    const own = chainsOf(network, voice).filter(
      ([pack, source, input]) =>
        !isBarred(costs, voice, source, input) &&
        !taken.has(`pack ${pack}`) &&
        !taken.has(`source ${source}`) &&
        !taken.has(`input ${input}`),
    );
    const fitting = own.filter(([, , input, track]) => {
      const others = sharersOf(chains, track);
      if (others.length === 0) return true;
      return (
        costs.gangSlots[track]! > 1 &&
        costs.gangInput[input] === 1 &&
        [voice, ...others].every((other) => costs.gang[other] !== Infinity) &&
        others.every((other) => costs.gangInput[chains[4 * other + 2]!] === 1)
      );
    });
    const rank = ([, , , track]: Nodes) =>
      2 * Math.min(1, sharersOf(chains, track).length) + network.end[voice * tracks + track]!;
    const best = fitting.sort((a, b) => rank(a) - rank(b))[0];
    if (!best) continue;
    chains.set(best, 4 * voice);
    taken.add(`pack ${best[0]}`).add(`source ${best[1]}`).add(`input ${best[2]}`);
  }
  return chains;
}

type Nodes = readonly [pack: number, source: number, input: number, track: number];

const sharersOf = (chains: Chains, track: number): number[] => {
  const sharers: number[] = [];
  for (let at = 3; at < chains.length; at += 4) if (chains[at] === track) sharers.push((at - 3) / 4);
  return sharers;
};

/** Every chain of one voice that stands without a change. */
function chainsOf(network: ChainNetwork, voice: number): Nodes[] {
  const { packs, sources, tracks, wear, tune, tuneExtras, feed, feedExtras, end } = network;
  const found: Nodes[] = [];
  for (let pack = 0; pack < packs.length; pack += 1) {
    if (wear[voice * packs.length + pack] !== 0) continue;
    for (const { source, input, bench, extras, bank, position } of network.paths) {
      if (bench + extras > 0 || (bank >= 0 && network.banks[bank]!.current !== position)) continue;
      const tuned = pack * sources.length + source;
      if (tune[tuned]! + tuneExtras[tuned]! > 0) continue;
      for (let track = 0; track < tracks.length; track += 1) {
        const fed = input * tracks.length + track;
        if (feed[fed]! + feedExtras[fed]! > 0 || end[voice * tracks.length + track] === Infinity) continue;
        found.push([pack, source, input, track]);
      }
    }
  }
  return found;
}
