import type { Chains, Reach, StageCosts } from '../network/stage-costs.ts';

export interface CheapestChains {
  /** Voice by source, by input, and by track alone and in a gang: the price so far, tolls included. */
  readonly toSource: Float64Array;
  readonly toInput: Float64Array;
  readonly alone: Float64Array;
  readonly shared: Float64Array;
  walk(barred: Uint8Array, reached: Reach, tolls: Float64Array): void;
  /** Recomputes one voice's rows without one of the nodes; -1 for all nodes. */
  walkWithout(voice: number, node: number): void;
  /** Cheapest chains to the given tracks (-1: none), chosen to share few nodes with each other. */
  chains(trackOf: Int32Array, isShared: Uint8Array): Chains;
}

/** For each voice alone, the cheapest path by packs, sources and inputs to every track, with tolls. */
export function cheapestChains(costs: StageCosts): CheapestChains {
  const { voices, packs, sources, inputs, tracks } = costs;
  const inner = packs + sources + inputs;
  const toSource = new Float64Array(voices * sources);
  const toInput = new Float64Array(voices * inputs);
  const alone = new Float64Array(voices * tracks);
  const shared = new Float64Array(voices * tracks);
  const used = new Int32Array(inner);
  let barred: Uint8Array = costs.barredAtStart;
  let tolls: Float64Array = new Float64Array(inner);
  let reachCost: Float64Array = new Float64Array(sources * inputs);

  const walkPacks = (voice: number): void => {
    const to = voice * sources;
    for (let pack = 0; pack < packs; pack += 1) {
      const paid = costs.wear[voice * packs + pack]! + tolls[pack]!;
      if (paid === Infinity || barred[voice * inner + pack]) continue;
      for (let source = 0, from = pack * sources; source < sources; source += 1, from += 1) {
        const total = paid + costs.tune[from]!;
        if (total < toSource[to + source]!) toSource[to + source] = total;
      }
    }
  };

  const walkSources = (voice: number): void => {
    const to = voice * inputs;
    for (let source = 0; source < sources; source += 1) {
      const paid = toSource[voice * sources + source]! + tolls[packs + source]!;
      if (paid === Infinity || barred[voice * inner + packs + source]) continue;
      for (let input = 0, from = source * inputs; input < inputs; input += 1, from += 1) {
        const total = paid + reachCost[from]!;
        if (total < toInput[to + input]!) toInput[to + input] = total;
      }
    }
  };

  const walkInputs = (voice: number): void => {
    const to = voice * tracks;
    for (let input = 0; input < inputs; input += 1) {
      const paid = toInput[voice * inputs + input]! + tolls[packs + sources + input]!;
      if (paid === Infinity || barred[voice * inner + packs + sources + input]) continue;
      const sharedPaid = costs.gangInput[input] ? paid + costs.gang[voice]! : Infinity;
      for (let track = 0, from = input * tracks; track < tracks; track += 1, from += 1) {
        const more = costs.feed[from]! + costs.end[to + track]!;
        if (paid + more < alone[to + track]!) alone[to + track] = paid + more;
        if (sharedPaid + more < shared[to + track]!) shared[to + track] = sharedPaid + more;
      }
    }
  };

  const walk = (nowBarred: Uint8Array, reached: Reach, nowTolls: Float64Array): void => {
    barred = nowBarred;
    tolls = nowTolls;
    reachCost = reached.cost;
    for (let voice = 0; voice < voices; voice += 1) walkVoice(voice);
  };

  const walkVoice = (voice: number): void => {
    toSource.fill(Infinity, voice * sources, (voice + 1) * sources);
    toInput.fill(Infinity, voice * inputs, (voice + 1) * inputs);
    alone.fill(Infinity, voice * tracks, (voice + 1) * tracks);
    shared.fill(Infinity, voice * tracks, (voice + 1) * tracks);
    walkPacks(voice);
    walkSources(voice);
    walkInputs(voice);
  };

  const walkWithout = (voice: number, node: number): void => {
    if (node < 0) {
      walkVoice(voice);
      return;
    }
    const at = voice * inner + node;
    const was = barred[at]!;
    barred[at] = 1;
    walkVoice(voice);
    barred[at] = was;
  };

  /** Of the cheapest paths back from a track, the one that meets the fewest others. */
  const trace = (voice: number, track: number, isShared: boolean, chains: Chains): void => {
    const goal = (isShared ? shared : alone)[voice * tracks + track]!;
    const gang = isShared ? costs.gang[voice]! : 0;
    let fewest = Infinity;
    for (let input = 0; input < inputs; input += 1) {
      const node = packs + sources + input;
      const met = used[node]!;
      if (met >= fewest || barred[voice * inner + node] || (isShared && !costs.gangInput[input])) continue;
      const atInput = toInput[voice * inputs + input]!;
      const onward = costs.feed[input * tracks + track]! + costs.end[voice * tracks + track]!;
      if (atInput + tolls[node]! + gang + onward !== goal) continue;
      const behind = traceInput(voice, input, fewest - met);
      if (behind === undefined) continue;
      fewest = met + behind;
      chains[4 * voice] = foundPack;
      chains[4 * voice + 1] = foundSource;
      chains[4 * voice + 2] = input;
    }
    chains[4 * voice + 3] = track;
  };

  let foundPack = -1;
  let foundSource = -1;

  const traceInput = (voice: number, input: number, below: number): number | undefined => {
    const goal = toInput[voice * inputs + input]!;
    let fewest = below;
    let pack = -1;
    for (let source = 0; source < sources; source += 1) {
      const node = packs + source;
      const met = used[node]!;
      if (met >= fewest || barred[voice * inner + node]) continue;
      const atSource = toSource[voice * sources + source]!;
      if (atSource + tolls[node]! + reachCost[source * inputs + input]! !== goal) continue;
      for (let candidate = 0; candidate < packs && met < fewest; candidate += 1) {
        if (met + used[candidate]! >= fewest || barred[voice * inner + candidate]) continue;
        const price = costs.wear[voice * packs + candidate]! + tolls[candidate]!;
        if (price + costs.tune[candidate * sources + source]! !== atSource) continue;
        fewest = met + used[candidate]!;
        pack = candidate;
        foundSource = source;
      }
    }
    if (pack < 0) return undefined;
    foundPack = pack;
    return fewest;
  };

  const count = (chains: Chains, voice: number, by: number): void => {
    used[chains[4 * voice]!]! += by;
    used[packs + chains[4 * voice + 1]!]! += by;
    used[packs + sources + chains[4 * voice + 2]!]! += by;
  };

  const chainsTo = (trackOf: Int32Array, isShared: Uint8Array): Chains => {
    const chains = new Int32Array(4 * voices).fill(-1);
    used.fill(0);
    for (let pass = 0; pass < 2; pass += 1) {
      for (let voice = 0; voice < voices; voice += 1) {
        if (trackOf[voice]! < 0) continue;
        if (pass > 0) count(chains, voice, -1);
        trace(voice, trackOf[voice]!, isShared[voice] === 1, chains);
        count(chains, voice, 1);
      }
    }
    return chains;
  };

  return { toSource, toInput, alone, shared, walk, walkWithout, chains: chainsTo };
}
