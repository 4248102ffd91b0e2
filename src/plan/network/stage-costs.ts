import type { ChainNetwork } from './chain-network.ts';

/** What one unit of each lower order costs in a stage, and each voice's cost in the upper two. */
export interface StageUnits {
  readonly packs: number;
  readonly bench: number;
  readonly track: number;
  readonly extras: number;
  readonly grain: number;
  readonly levelOf: readonly number[];
  /** How many voices of each level may be left out, and what leaving out each voice costs. */
  readonly outPlaces: readonly number[];
  readonly out: Float64Array;
  /** Recording the voice in a gang; Infinity if it must be alone. */
  readonly gang: Float64Array;
}

/** One whole number for everything a chain can cost; Infinity if not allowed. Matrices are row-major. */
export interface StageCosts {
  readonly voices: number;
  readonly packs: number;
  readonly sources: number;
  readonly inputs: number;
  readonly tracks: number;
  readonly wear: Float64Array;
  readonly tune: Float64Array;
  readonly feed: Float64Array;
  readonly end: Float64Array;
  readonly levelOf: readonly number[];
  readonly outPlaces: readonly number[];
  readonly out: Float64Array;
  readonly gang: Float64Array;
  /** How many inputs can share the track; below 2 it carries at most one voice. */
  readonly gangSlots: Int32Array;
  readonly gangInput: Uint8Array;
  readonly barredAtStart: Uint8Array;
  readonly pathCost: Float64Array;
  readonly throwCost: Float64Array;
  /** Smaller differences belong to no order: a plan that is this close to the best counts as best. */
  readonly grain: number;
  /** One unit of the fourth order, 1 in the stages before. */
  readonly unit: number;
  readonly network: ChainNetwork;
}

/** Puts costs on a network. A chain costs the sum along it plus its end; see `chainsCost` for plans. */
export function stageCosts(network: ChainNetwork, units: StageUnits): StageCosts {
  const { voices, packs, sources, inputs, tracks } = network;
  const effort = (bench: number, extras: number) =>
    bench === Infinity ? Infinity : bench * units.bench + extras * units.extras;
  const times = (value: number, unit: number) => (value === Infinity ? Infinity : value * unit);
  const fitting = (packCost: number, extras: number) =>
    packCost === Infinity ? Infinity : packCost * units.packs + extras * units.extras;
  return {
    voices: voices.length,
    packs: packs.length,
    sources: sources.length,
    inputs: inputs.length,
    tracks: tracks.length,
    wear: network.wear.map((cost, at) => fitting(cost, network.wearExtras[at]!)),
    tune: network.tune.map((bench, at) => effort(bench, network.tuneExtras[at]!)),
    feed: network.feed.map((bench, at) => effort(bench, network.feedExtras[at]!)),
    end: network.end.map((miss) => times(miss, units.track)),
    levelOf: units.levelOf,
    outPlaces: units.outPlaces,
    out: units.out,
    gang: units.gang.map((cost, voice) => (voices[voice]!.alone ? Infinity : cost)),
    gangSlots: gangSlots(network),
    gangInput: Uint8Array.from(inputs, ({ canGang }) => (canGang ? 1 : 0)),
    barredAtStart: barredAtStart(network),
    pathCost: Float64Array.from(network.paths, ({ bench, extras }) => effort(bench, extras)),
    throwCost: Float64Array.from(network.banks, ({ bench, extras }) => effort(bench, extras)),
    grain: units.grain,
    unit: Math.max(1, units.bench),
    network,
  };
}

function gangSlots({ inputs, tracks, feed }: ChainNetwork): Int32Array {
  return Int32Array.from(tracks, ({ gangAllowed }, track) =>
    gangAllowed
      ? inputs.filter(({ canGang }, input) => canGang && feed[input * tracks.length + track] !== Infinity)
          .length
      : 0,
  );
}

/** Voice by inner node (packs, then sources, then inputs): 1 if the voice may not pass. */
function barredAtStart({
  voices,
  packs,
  sources,
  inputs,
  sourceBarred,
  inputBarred,
}: ChainNetwork): Uint8Array {
  const inner = packs.length + sources.length + inputs.length;
  const barred = new Uint8Array(voices.length * inner);
  voices.forEach((_voice, at) => {
    const row = at * inner + packs.length;
    barred.set(sourceBarred.subarray(at * sources.length, (at + 1) * sources.length), row);
    barred.set(inputBarred.subarray(at * inputs.length, (at + 1) * inputs.length), row + sources.length);
  });
  return barred;
}

/** The cheapest path from each source to each input with shared selectors as given (-1: not decided yet). */
export interface Reach {
  readonly cost: Float64Array;
  readonly path: Int32Array;
}

export function reach(costs: StageCosts, positions: Int32Array): Reach {
  const cost = new Float64Array(costs.sources * costs.inputs).fill(Infinity);
  const path = new Int32Array(costs.sources * costs.inputs).fill(-1);
  costs.network.paths.forEach(({ source, input, bank, position }, at) => {
    if (bank >= 0 && positions[bank]! >= 0 && positions[bank] !== position) return;
    const cell = source * costs.inputs + input;
    if (costs.pathCost[at]! >= cost[cell]!) return;
    cost[cell] = costs.pathCost[at]!;
    path[cell] = at;
  });
  return { cost, path };
}

/** The cost of the shared selectors' positions; undecided ones are taken to stay. */
export function throwsCost(costs: StageCosts, positions: Int32Array): number {
  return costs.network.banks.reduce(
    (sum, { current }, bank) =>
      sum + (positions[bank]! >= 0 && positions[bank] !== current ? costs.throwCost[bank]! : 0),
    0,
  );
}

/** Four nodes per voice: pack, source, input, track; all -1 if the voice is left out. */
export type Chains = Int32Array;

/** Whether a pin keeps the voice away from the source or the input. */
export function isBarred(costs: StageCosts, voice: number, source: number, input: number): boolean {
  const row = voice * (costs.packs + costs.sources + costs.inputs) + costs.packs;
  return costs.barredAtStart[row + source]! + costs.barredAtStart[row + costs.sources + input]! > 0;
}

/** The cost of a plan with every shared selector decided; Infinity if not allowed. */
export function chainsCost(costs: StageCosts, chains: Chains, reached: Reach, positions: Int32Array): number {
  const sharing = new Int32Array(costs.tracks);
  for (let at = 3; at < chains.length; at += 4) if (chains[at]! >= 0) sharing[chains[at]!]! += 1;
  const places = [...costs.outPlaces];
  let total = throwsCost(costs, positions);
  for (let voice = 0; voice < costs.voices; voice += 1) {
    const pack = chains[4 * voice]!;
    if (pack < 0) {
      const level = costs.levelOf[voice]!;
      places[level]! -= 1;
      if (places[level]! < 0) return Infinity;
      total += costs.out[voice]!;
      continue;
    }
    const source = chains[4 * voice + 1]!;
    const input = chains[4 * voice + 2]!;
    const track = chains[4 * voice + 3]!;
    if (isBarred(costs, voice, source, input)) return Infinity;
    total +=
      costs.wear[voice * costs.packs + pack]! +
      costs.tune[pack * costs.sources + source]! +
      reached.cost[source * costs.inputs + input]! +
      costs.feed[input * costs.tracks + track]! +
      costs.end[voice * costs.tracks + track]!;
    if (sharing[track]! < 2) continue;
    if (costs.gangSlots[track]! < 2 || !costs.gangInput[input]) return Infinity;
    total += costs.gang[voice]!;
  }
  return total;
}
