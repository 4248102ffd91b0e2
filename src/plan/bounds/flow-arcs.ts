import { reach, type StageCosts } from '../network/stage-costs.ts';
import { type Branch, GANG, SINGLE } from './relaxation.ts';

/** Arcs in pairs: an even one and the next odd one, its reverse. `head`, `next`: the arcs of a node. */
export interface FlowArcs {
  readonly head: Int32Array;
  readonly next: Int32Array;
  readonly to: Int32Array;
  readonly cost: Float64Array;
  readonly room: Int32Array;
  /** For the searches: a stack of nodes at the nearest distance, and the nodes further off. */
  readonly near: Int32Array;
  readonly far: Int32Array;
}

/** Where each layer's nodes are numbered from; a pack, source or input has two, one in and one out. */
export interface FlowNodes {
  readonly entry: (inner: number) => number;
  readonly exit: (inner: number) => number;
  /** A track used by one voice alone, and shared by several. */
  readonly alone: (track: number) => number;
  readonly shared: (track: number) => number;
  readonly out: (level: number) => number;
  readonly sink: number;
}

export function flowNodes({ voices, packs, sources, inputs, tracks, outPlaces }: StageCosts): FlowNodes {
  const firstTrack = voices + 2 * (packs + sources + inputs);
  return {
    entry: (inner) => voices + 2 * inner,
    exit: (inner) => voices + 2 * inner + 1,
    alone: (track) => firstTrack + track,
    shared: (track) => firstTrack + tracks + track,
    out: (level) => firstTrack + 2 * tracks + level,
    sink: firstTrack + 2 * tracks + outPlaces.length,
  };
}

/** The links between two layers, row by row. */
interface Links {
  readonly rows: number;
  readonly columns: number;
  readonly cost: (at: number, row: number) => number;
  readonly from: (row: number) => number;
  readonly to: (column: number) => number;
}

export function flowArcs(costs: StageCosts, { mode, positions }: Branch, nodes: FlowNodes): FlowArcs {
  const { voices, packs, sources, inputs, tracks } = costs;
  const inner = packs + sources + inputs;
  const { entry, exit, alone, shared, out, sink } = nodes;
  const { cost: reachCost } = reach(costs, positions);
  const leastGang = costs.gang.reduce((least, cost) => Math.min(least, cost), Infinity);
  const canGang = (input: number) => leastGang < Infinity && costs.gangInput[input] === 1;
  const ofSource = (source: number) => packs + source;
  const ofInput = (input: number) => packs + sources + input;
  const feeding = { rows: inputs, columns: tracks, from: (row: number) => exit(ofInput(row)) };
  const links: Links[] = [
    { ...feeding, cost: (at) => costs.feed[at]!, to: alone },
    { ...feeding, cost: (at, row) => (canGang(row) ? costs.feed[at]! : Infinity), to: shared },
    {
      rows: sources,
      columns: inputs,
      cost: (at) => reachCost[at]!,
      from: (row) => exit(ofSource(row)),
      to: (column) => entry(ofInput(column)),
    },
    {
      rows: packs,
      columns: sources,
      cost: (at) => costs.tune[at]!,
      from: exit,
      to: (column) => entry(ofSource(column)),
    },
    { rows: voices, columns: packs, cost: (at) => costs.wear[at]!, from: (row) => row, to: entry },
  ];
  const most = links.reduce((sum, { rows, columns }) => sum + rows * columns, inner + 2 * tracks + voices);
  const { arcs, add } = emptyArcs(sink + 1, 2 * (most + costs.outPlaces.length));
  for (let track = 0; track < tracks; track += 1) {
    const places = mode[track] === SINGLE ? 0 : costs.gangSlots[track]!;
    if (mode[track] !== GANG) add(alone(track), sink, 0, 1);
    if (places > 1) add(shared(track), sink, leastGang, mode[track] === GANG ? places : places - 1);
  }
  for (let node = 0; node < inner; node += 1) add(entry(node), exit(node), 0, 1);
  costs.outPlaces.forEach((places, level) => {
    add(out(level), sink, 0, places);
  });
  costs.levelOf.forEach((level, voice) => {
    add(voice, out(level), costs.out[voice]!, 1);
  });
  for (const { rows, columns, cost, from, to } of links) {
    for (let row = 0, at = 0; row < rows; row += 1) {
      for (let column = 0; column < columns; column += 1, at += 1)
        add(from(row), to(column), cost(at, row), 1);
    }
  }
  return arcs;
}

/** Room for so many arcs, and a function that adds one if it costs less than Infinity. */
export function emptyArcs(nodes: number, most: number) {
  const arcs: FlowArcs = {
    head: new Int32Array(nodes).fill(-1),
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
  return { arcs, add };
}
