import type { StageCosts } from '../network/stage-costs.ts';
import { emptyArcs, flowNodes } from './flow-arcs.ts';
import type { Branch, Relaxed } from './relaxation.ts';

export interface NarrowPlace {
  /** 1 for each pack, source or input in it. */
  readonly isIn: Uint8Array;
  /** How many more voices would have to pass than there are nodes. */
  readonly tooMany: number;
}

/**
 * The fewest nodes that all voices of a bound would have to pass, if there are more voices than nodes: a
 * minimum cut beside a maximum flow (Ford and Fulkerson 1956; from memory). Undefined if everybody gets
 * through. Tolls climb slowly there, since only one or two nodes are used twice at a time, and another as
 * soon as these cost more.
 */
export function narrowPlace(
  costs: StageCosts,
  { barred }: Branch,
  { chains, reached }: Relaxed,
): NarrowPlace | undefined {
  const { voices, packs, sources, inputs } = costs;
  const inner = packs + sources + inputs;
  const { entry, exit, sink } = flowNodes(costs);
  const most = inner + inputs + voices * packs + packs * sources + sources * inputs;
  const { arcs, add } = emptyArcs(sink + 1, 2 * most);
  for (let node = 0; node < inner; node += 1) add(entry(node), exit(node), 0, 1);
  for (let input = 0; input < inputs; input += 1) add(exit(packs + sources + input), sink, 0, 1);
  costs.tune.forEach((cost, at) => {
    const source = at % sources;
    add(exit((at - source) / sources), entry(packs + source), cost, 1);
  });
  reached.cost.forEach((cost, at) => {
    const input = at % inputs;
    add(exit(packs + (at - input) / inputs), entry(packs + sources + input), cost, 1);
  });
  costs.wear.forEach((cost, at) => {
    const pack = at % packs;
    const voice = (at - pack) / packs;
    if (!barred[voice * inner + pack]) add(voice, entry(pack), cost, 1);
  });

  const seen = new Uint8Array(sink + 1);
  const push = (node: number): boolean => {
    if (node === sink) return true;
    seen[node] = 1;
    for (let arc = arcs.head[node]!; arc >= 0; arc = arcs.next[arc]!) {
      if (arcs.room[arc] === 0 || seen[arcs.to[arc]!] || !push(arcs.to[arc]!)) continue;
      arcs.room[arc]! -= 1;
      arcs.room[arc ^ 1]! += 1;
      return true;
    }
    return false;
  };
  const stuck: number[] = [];
  for (let voice = 0; voice < voices; voice += 1) {
    seen.fill(0);
    if (chains[4 * voice]! >= 0 && !push(voice)) stuck.push(voice);
  }
  if (stuck.length === 0) return undefined;
  seen.fill(0);
  for (const voice of stuck) push(voice);
  const isIn = Uint8Array.from({ length: inner }, (_value, node) => seen[entry(node)]! & ~seen[exit(node)]!);
  return { isIn, tooMany: stuck.length };
}
