import type { Chains, StageCosts } from '../network/stage-costs.ts';
import { type FlowArcs, type FlowNodes, flowArcs, flowNodes } from './flow-arcs.ts';
import type { Branch } from './relaxation.ts';

export interface ChainFlow {
  /** Chains that share no forbidden node; cheapest if only neighbouring links cost something. */
  readonly chains: Chains;
  /** Sets of tolls for packs, sources and inputs, all from optimal prices of the flow. */
  readonly prices: readonly Float64Array[];
}

/**
 * The same chains as a minimum-cost flow, one voice at a time along shortest augmenting paths (Edmonds and
 * Karp, J. ACM 19 (1972) 248-264; from memory). It ignores who ends on which track, and so the cost of gangs;
 * its prices say what one more pack, source or input would be worth.
 */
export function chainFlow(costs: StageCosts, branch: Branch): ChainFlow {
  const { voices, packs, sources, inputs } = costs;
  const nodes = flowNodes(costs);
  const { entry, exit, sink } = nodes;
  const arcs = flowArcs(costs, branch, nodes);
  const potential = new Float64Array(sink + 1);
  for (let voice = 0; voice < voices; voice += 1) augment(arcs, potential, voice, sink);
  const ends = Array.from({ length: packs }, (_value, pack) => exit(pack));
  const late = [distancesTo(arcs, potential, [sink]), distancesTo(arcs, potential, ends)];
  const price = (at: (node: number) => number) =>
    Float64Array.from({ length: packs + sources + inputs }, (_value, inner) => {
      const value = at(exit(inner)) - at(entry(inner));
      return value > 0 && value < Infinity ? value : 0;
    });
  return {
    chains: readChains(arcs, costs, nodes),
    prices: [potential, ...late.map((distance) => distance.map((far) => -far))].map((level) =>
      price((node) => level[node]!),
    ),
  };
}

/**
 * Dijkstra over reduced costs from the starts (at their initial costs), along arcs or against them. Nodes at
 * equal distance are taken last in first out, so that a free path is followed to its end at once.
 */
function walk(
  arcs: FlowArcs,
  potential: Float64Array,
  starts: readonly (readonly [node: number, distance: number])[],
  against: boolean,
  onFinal: (node: number, distance: number) => boolean,
): { distance: Float64Array; by: Int32Array } {
  const { head, next, to, cost, room, near, far } = arcs;
  const distance = new Float64Array(potential.length).fill(Infinity);
  const by = new Int32Array(potential.length).fill(-1);
  const isFinal = new Uint8Array(potential.length);
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
        if (isFinal[node]) continue;
        far[kept++] = node;
        nearest = Math.min(nearest, distance[node]!);
      }
      if (kept === 0) return { distance, by };
      fars = kept;
      for (let at = 0; at < fars; at += 1) if (distance[far[at]!] === nearest) near[nears++] = far[at]!;
    }
    nears -= 1;
    const node = near[nears]!;
    if (isFinal[node]) continue;
    isFinal[node] = 1;
    const here = distance[node]!;
    if (onFinal(node, here)) return { distance, by };
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

/** Sends one unit from the voice to the sink if possible. */
function augment(arcs: FlowArcs, potential: Float64Array, voice: number, sink: number): void {
  const final: number[] = [];
  const { distance, by } = walk(
    arcs,
    potential,
    [[voice, 0]],
    false,
    (node) => final.push(node) > 0 && node === sink,
  );
  const far = distance[sink]!;
  if (far === Infinity) return;
  // Nodes not final are at least as far as the sink; all would rise together, so only the final ones move,
  // downwards.
  for (const node of final) potential[node]! += distance[node]! - far;
  for (let node = sink; node !== voice; ) {
    const arc = by[node]!;
    arcs.room[arc]! -= 1;
    arcs.room[arc ^ 1]! += 1;
    node = arcs.to[arc ^ 1]!;
  }
}

/** The cost from every node to the nearest of the ends in the residual network. */
function distancesTo(arcs: FlowArcs, potential: Float64Array, ends: readonly number[]): Float64Array {
  // Reduced costs keep every step at zero or more; the ends then start as far apart as their potentials are.
  const lowest = Math.min(...ends.map((end) => potential[end]!));
  const starts = ends.map((end) => [end, potential[end]! - lowest] as const);
  const { distance } = walk(arcs, potential, starts, true, () => false);
  return distance.map((far, node) => far - potential[node]! + lowest);
}

function readChains(arcs: FlowArcs, costs: StageCosts, { entry, alone }: FlowNodes): Chains {
  const { voices, packs, sources, tracks } = costs;
  const chains = new Int32Array(4 * voices).fill(-1);
  const onward = (node: number): number => {
    for (let arc = arcs.head[node]!; arc >= 0; arc = arcs.next[arc]!) {
      if ((arc & 1) === 0 && arcs.room[arc ^ 1]! > 0) return arcs.to[arc]!;
    }
    return -1;
  };
  for (let voice = 0; voice < voices; voice += 1) {
    const pack = onward(voice);
    if (pack < 0 || pack >= alone(0)) continue;
    const source = onward(pack + 1);
    const input = onward(source + 1);
    const inner = [pack, source, input].map((node) => (node - entry(0)) / 2);
    chains[4 * voice] = inner[0]!;
    chains[4 * voice + 1] = inner[1]! - packs;
    chains[4 * voice + 2] = inner[2]! - packs - sources;
    chains[4 * voice + 3] = (onward(input + 1) - alone(0)) % tracks;
  }
  return chains;
}
