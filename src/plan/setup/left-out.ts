import type { ChainNetwork } from '../network/chain-network.ts';
import type { Chains } from '../network/stage-costs.ts';

/** The first thing missing for a voice left out, looking along the chain at what nobody uses. */
export type WhyLeftOut =
  | { readonly code: 'no-transmitter-left' }
  | { readonly code: 'pinned-transmitter-out'; readonly transmitter: string }
  | { readonly code: 'no-channel-left' }
  | { readonly code: 'no-way-in' }
  | { readonly code: 'no-input-left' }
  | { readonly code: 'no-track-left' }
  | { readonly code: 'more-important-first' };

export interface LeftOutVoice {
  readonly voice: string;
  readonly why: WhyLeftOut;
}

/** Why the chains leave a voice out; for a hardline voice the channel is its own source. */
export function whyLeftOut(network: ChainNetwork, chains: Chains, voice: number): WhyLeftOut {
  const { packs, sources, inputs, tracks, wear, tune, feed, end, paths, voices } = network;
  const used = [0, 1, 2, 3].map((layer) => new Set(chains.filter((_node, at) => at % 4 === layer)));
  const indexes = (list: readonly unknown[]) => list.map((_item, at) => at);
  const { pinnedTransmitter, hardline } = voices[voice]!;
  const worn = indexes(packs).filter((pack) => wear[voice * packs.length + pack] !== Infinity);
  if (worn.length === 0 && pinnedTransmitter) {
    return { code: 'pinned-transmitter-out', transmitter: pinnedTransmitter };
  }
  const freePacks = worn.filter((pack) => !used[0]!.has(pack));
  if (freePacks.length === 0) return { code: 'no-transmitter-left' };
  const heard = indexes(sources).filter(
    (source) =>
      !network.sourceBarred[voice * sources.length + source] &&
      freePacks.some((pack) => tune[pack * sources.length + source] !== Infinity),
  );
  const freeSources = heard.filter((source) => !used[1]!.has(source));
  if (freeSources.length === 0) return { code: hardline === undefined ? 'no-channel-left' : 'no-way-in' };
  const reached = paths
    .filter(
      ({ source, input }) =>
        freeSources.includes(source) && !network.inputBarred[voice * inputs.length + input],
    )
    .map(({ input }) => input);
  if (reached.length === 0) return { code: 'no-way-in' };
  const freeInputs = reached.filter((input) => !used[2]!.has(input));
  if (freeInputs.length === 0) return { code: 'no-input-left' };
  const freeTracks = indexes(tracks).filter(
    (track) =>
      !used[3]!.has(track) &&
      end[voice * tracks.length + track] !== Infinity &&
      freeInputs.some((input) => feed[input * tracks.length + track] !== Infinity),
  );
  return { code: freeTracks.length === 0 ? 'no-track-left' : 'more-important-first' };
}
