import { type Branch, GANG, SINGLE } from './relaxation.ts';
import { type Chains, reach, type StageCosts } from './stage-costs.ts';

export interface ChainFlow {
  /** Chains that share no node they may not share; cheapest as far as only neighbouring links cost something. */
  readonly chains: Chains;
  /** Sets of tolls for packs, sources and inputs, all from optimal prices of the flow. */
  readonly prices: readonly Float64Array[];
}

/** Arcs in pairs: an even one forwards, the odd one after it back. `head` and `next` list the arcs of a node. */
interface Arcs {
  readonly head: Int32Array;
  readonly next: Int32Array;
  readonly to: Int32Array;
  readonly cost: Float64Array;
  readonly room: Int32Array;
  /** For the walks: nodes as near as the nearest, last in first out, and nodes further off. */
  readonly near: Int32Array;
  readonly far: Int32Array;
}

/**
 * The same chains as a minimum-cost flow, voice by voice along shortest augmenting paths (Edmonds and Karp, J. ACM 19
 * (1972) 248-264; from memory). It forgets who ends on which track, and so also what gangs cost whom; its prices say
 * what the next pack, source or input would be worth.
 */
export function chainFlow(costs: StageCosts, branch: Branch): ChainFlow {
  const { voices, packs, sources, inputs } = costs;
  const inner = packs + sources + inputs;
  const sink = voices + 2 * inner + costs.tracks + costs.outPlaces.length;
  const arcs = layArcs(costs, branch, sink);
  const potential = new Float64Array(sink + 1);
  for (let voice = 0; voice < voices; voice += 1) augment(arcs, potential, voice, sink);
  const ends = Array.from({ length: packs }, (_value, pack) => voices + 2 * pack + 1);
  const late = [distancesTo(arcs, potential, [sink]), distancesTo(arcs, potential, ends)];
  const price = (at: (node: number) => number) =>
    Float64Array.from({ length: inner }, (_value, node) => {
      const value = at(voices + 2 * node + 1) - at(voices + 2 * node);
      return value > 0 && value < Infinity ? value : 0;
    });
  return {
    chains: readChains(arcs, costs),
    prices: [potential, ...late.map((distance) => distance.map((far) => -far))].map((level) =>
      price((node) => level[node]!),
    ),
  };
}

function layArcs(costs: StageCosts, { mode, positions }: Branch, sink: number): Arcs {
  const { voices, packs, sources, inputs, tracks } = costs;
  const links = voices * packs + packs * sources + sources * inputs + inputs * tracks;
  const most = 2 * (links + packs + sources + inputs + 2 * tracks + voices + costs.outPlaces.length);
  const arcs: Arcs = {
    head: new Int32Array(sink + 1).fill(-1),
    next: new Int32Array(most),
    to: new Int32Array(most),
    cost: new Float64Array(most),
    room: new Int32Array(most),
    near: new Int32Array(most),
    far: new Int32Array(most),
  };
  let count = 0;
  const half = (from: number, to: number, cost: number, room: number): void => {
    arcs.next[count] = arcs.head[from]!;
    arcs.head[from] = count;
    arcs.to[count] = to;
    arcs.cost[count] = cost;
    arcs.room[count] = room;
    count += 1;
  };
  const add = (from: number, to: number, cost: number, room: number): void => {
    if (cost === Infinity) return;
    half(from, to, cost, room);
    half(to, from, -cost, 0);
  };
  const entry = (node: number) => voices + 2 * node;
  const exit = (node: number) => voices + 2 * node + 1;
  const firstTrack = voices + 2 * (packs + sources + inputs);
  const { cost: reachCost } = reach(costs, positions);
  for (let track = 0; track < tracks; track += 1) {
    const places = mode[track] === SINGLE ? 0 : costs.gangSlots[track]!;
    if (mode[track] !== GANG) add(firstTrack + track, sink, 0, 1);
    if (places > 1)
      add(firstTrack + track, sink, gangFloor(costs), mode[track] === GANG ? places : places - 1);
  }
  const bipartite = (
    rows: number,
    columns: number,
    cost: Float64Array,
    from: (row: number) => number,
    to: (column: number) => number,
  ) => {
    for (let row = 0; row < rows; row += 1) {
      for (let column = 0; column < columns; column += 1)
        add(from(row), to(column), cost[row * columns + column]!, 1);
    }
  };
  for (let node = 0; node < packs + sources + inputs; node += 1) add(entry(node), exit(node), 0, 1);
  bipartite(
    inputs,
    tracks,
    costs.feed,
    (input) => exit(packs + sources + input),
    (track) => firstTrack + track,
  );
  bipartite(
    sources,
    inputs,
    reachCost,
    (source) => exit(packs + source),
    (input) => entry(packs + sources + input),
  );
  bipartite(packs, sources, costs.tune, exit, (source) => entry(packs + source));
  costs.outPlaces.forEach((places, level) => {
    add(firstTrack + tracks + level, sink, 0, places);
  });
  costs.levelOf.forEach((level, voice) => {
    add(voice, firstTrack + tracks + level, costs.out[voice]!, 1);
  });
  bipartite(voices, packs, costs.wear, (voice) => voice, entry);
  return arcs;
}

const gangFloor = ({ gang }: StageCosts): number =>
  gang.reduce((least, cost) => Math.min(least, cost), Infinity);

/**
 * Dijkstra over reduced costs from the starts (with what they cost already), along arcs or against them. Nodes at one
 * distance are taken last in first out, so that a free path is followed to its end at once.
 */
function walk(
  arcs: Arcs,
  potential: Float64Array,
  starts: readonly (readonly [node: number, distance: number])[],
  against: boolean,
  settle: (node: number, distance: number) => boolean,
): { distance: Float64Array; by: Int32Array } {
  const { head, next, to, cost, room, near, far } = arcs;
  const distance = new Float64Array(potential.length).fill(Infinity);
  const by = new Int32Array(potential.length).fill(-1);
  const isSettled = new Uint8Array(potential.length);
  let nears = 0;
  let fars = 0;
  for (const [node, start] of starts) {
    distance[node] = start;
    far[fars++] = node;
  }
  for (;;) {
    if (nears === 0) {
      let nearest = Infinity;
      let kept = 0;
      for (let at = 0; at < fars; at += 1) {
        const node = far[at]!;
        if (isSettled[node]) continue;
        far[kept++] = node;
        nearest = Math.min(nearest, distance[node]!);
      }
      if (kept === 0) return { distance, by };
      fars = kept;
      for (let at = 0; at < fars; at += 1) if (distance[far[at]!] === nearest) near[nears++] = far[at]!;
    }
    nears -= 1;
    const node = near[nears]!;
    if (isSettled[node]) continue;
    isSettled[node] = 1;
    const here = distance[node]!;
    if (settle(node, here)) return { distance, by };
    for (let listed = head[node]!; listed >= 0; listed = next[listed]!) {
      const arc = against ? listed ^ 1 : listed;
      if (room[arc] === 0) continue;
      const other = to[listed]!;
      const step = against ? potential[other]! - potential[node]! : potential[node]! - potential[other]!;
      const through = here + cost[arc]! + step;
      if (through >= distance[other]!) continue;
      distance[other] = through;
      by[other] = arc;
      if (through === here) near[nears++] = other;
      else far[fars++] = other;
    }
  }
}

/** Sends one unit from the voice to the sink where it can. */
function augment(arcs: Arcs, potential: Float64Array, voice: number, sink: number): void {
  const settled: number[] = [];
  const { distance, by } = walk(
    arcs,
    potential,
    [[voice, 0]],
    false,
    (node) => settled.push(node) > 0 && node === sink,
  );
  const far = distance[sink]!;
  if (far === Infinity) return;
  // Nodes not settled stand at least as far as the sink; all rise together, so only the settled ones move, downwards.
  for (const node of settled) potential[node]! += distance[node]! - far;
  for (let node = sink; node !== voice; ) {
    const arc = by[node]!;
    arcs.room[arc]! -= 1;
    arcs.room[arc ^ 1]! += 1;
    node = arcs.to[arc ^ 1]!;
  }
}

/** What it costs to get from every node to the nearest of the ends in what is left of the network. */
function distancesTo(arcs: Arcs, potential: Float64Array, ends: readonly number[]): Float64Array {
  // Reduced costs keep every step at zero or more; the ends then start as far apart as their potentials are.
  const lowest = Math.min(...ends.map((end) => potential[end]!));
  const starts = ends.map((end) => [end, potential[end]! - lowest] as const);
  const { distance } = walk(arcs, potential, starts, true, () => false);
  return distance.map((far, node) => far - potential[node]! + lowest);
}

function readChains(arcs: Arcs, { voices, packs, sources, inputs, tracks }: StageCosts): Chains {
  const chains = new Int32Array(4 * voices).fill(-1);
  const firstInner = voices;
  const firstTrack = voices + 2 * (packs + sources + inputs);
  const onward = (node: number): number => {
    for (let arc = arcs.head[node]!; arc >= 0; arc = arcs.next[arc]!) {
      if ((arc & 1) === 0 && arcs.room[arc ^ 1]! > 0) return arcs.to[arc]!;
    }
    return -1;
  };
  for (let voice = 0; voice < voices; voice += 1) {
    const pack = onward(voice);
    if (pack < 0 || pack >= firstTrack + tracks) continue;
    const source = onward(pack + 1);
    const input = onward(source + 1);
    const track = onward(input + 1);
    chains[4 * voice] = (pack - firstInner) / 2;
    chains[4 * voice + 1] = (source - firstInner) / 2 - packs;
    chains[4 * voice + 2] = (input - firstInner) / 2 - packs - sources;
    chains[4 * voice + 3] = track - firstTrack;
  }
  return chains;
}
