import { augmentingPaths } from '../../matching/augmenting-paths.ts';
import { type Chains, type Reach, reach, type StageCosts, throwsCost } from '../network/stage-costs.ts';
import { cheapestChains } from './cheapest-chains.ts';

/** How a track that could carry a gang is used in one branch of the search. */
export const OPEN = 0;
export const SINGLE = 1;
export const GANG = 2;

/** One branch: who may not pass where, gang tracks, shared selectors, and who must be in. */
export interface Branch {
  readonly barred: Uint8Array;
  readonly mode: Uint8Array;
  readonly positions: Int32Array;
  readonly mustBeIn: Uint8Array;
}

export interface Relaxed {
  /** Nothing in the branch can cost less. Infinity: nothing in it is feasible. */
  readonly bound: number;
  /** The chains behind the bound; they may share nodes that they may not. */
  readonly chains: Chains;
  readonly reached: Reach;
  /** The tolls that counted: zero where at most one voice may pass. */
  readonly tolls: Float64Array;
  /** Price from each voice to each source and input with tolls, valid until the next bound. */
  readonly toSource: Float64Array;
  readonly toInput: Float64Array;
}

export interface Relaxation {
  relax(branch: Branch, prices: Float64Array): Relaxed;
  /**
   * Right after `relax`: nodes that a voice must pass, since the bound without them would rise by `room` or
   * more. Pairs of voice and node.
   */
  forced(relaxed: Relaxed, room: number): readonly (readonly [voice: number, node: number])[];
}

/**
 * Lower bounds: every inner node (pack, source, input) may be used by anyone who pays its toll, the tolls are
 * paid back once, and what is left is an assignment of voices to tracks over each pair's cheapest chain
 * (Lagrangian relaxation, Held and Karp, Oper. Res. 18 (1970) 1138-1162; from memory). Any tolls >= 0 give a
 * true bound.
 */
export function relaxation(costs: StageCosts): Relaxation {
  const { voices, packs, sources, inputs, tracks } = costs;
  const inner = packs + sources + inputs;
  const cheapest = cheapestChains(costs);
  const slots = costs.gangSlots.reduce((sum, places) => sum + Math.min(places, voices), 0);
  const maxColumns = tracks + slots + costs.outPlaces.reduce((sum, places) => sum + places, 0);
  const solver = augmentingPaths(voices, maxColumns);
  const table = new Float64Array(voices * maxColumns);
  const columnTrack = new Int32Array(maxColumns);
  const columnShared = new Uint8Array(maxColumns);
  const trackOf = new Int32Array(voices);
  const isShared = new Uint8Array(voices);
  let columns = 0;
  const canShare = costs.gang.some((cost) => cost !== Infinity);

  /** A toll counts only where two voices or more could pass; elsewhere there is nothing to ration. */
  const countTolls = ({ barred }: Branch, prices: Float64Array): Float64Array =>
    prices.map((price, node) => {
      let open = 0;
      for (let at = node; price > 0 && at < barred.length && open < 2; at += inner) open += 1 - barred[at]!;
      return open < 2 ? 0 : price;
    });

  /** Columns: one per single-voice track, per place in a gang, and per voice that may be left out. */
  const layColumns = ({ mode }: Branch): number => {
    let laid = 0;
    const add = (track: number, shared: number) => {
      columnTrack[laid] = track;
      columnShared[laid] = shared;
      laid += 1;
    };
    for (let track = 0; track < tracks; track += 1) {
      const places = canShare && mode[track] !== SINGLE ? Math.min(costs.gangSlots[track]!, voices) : 0;
      if (mode[track] !== GANG) add(track, 0);
      for (let place = mode[track] === GANG ? 0 : 1; place < places; place += 1) add(track, 1);
    }
    costs.outPlaces.forEach((places, level) => {
      for (let place = 0; place < places; place += 1) add(-1 - level, 0);
    });
    return laid;
  };

  const fillTable = ({ mustBeIn }: Branch): void => {
    for (let voice = 0, at = 0; voice < voices; voice += 1) {
      const row = voice * tracks;
      const level = mustBeIn[voice] ? Infinity : costs.levelOf[voice]!;
      for (let column = 0; column < columns; column += 1, at += 1) {
        const track = columnTrack[column]!;
        if (track < 0) table[at] = track === -1 - level ? costs.out[voice]! : Infinity;
        else table[at] = (columnShared[column] ? cheapest.shared : cheapest.alone)[row + track]!;
      }
    }
  };

  const readTracks = (): number => {
    let total = 0;
    for (let voice = 0; voice < voices; voice += 1) {
      const column = solver.columnOf[voice]!;
      total += table[voice * columns + column]!;
      trackOf[voice] = columnTrack[column]!;
      isShared[voice] = columnShared[column]!;
    }
    return total;
  };

  const relax = (branch: Branch, prices: Float64Array): Relaxed => {
    const reached = reach(costs, branch.positions);
    const tolls = countTolls(branch, prices);
    cheapest.walk(branch.barred, reached, tolls);
    columns = layColumns(branch);
    fillTable(branch);
    const { toSource, toInput } = cheapest;
    if (columns < voices || !solver.run(table, voices, columns)) {
      return {
        bound: Infinity,
        chains: new Int32Array(4 * voices).fill(-1),
        reached,
        tolls,
        toSource,
        toInput,
      };
    }
    const paidBack = tolls.reduce((sum, toll) => sum + toll, 0);
    const bound = readTracks() - paidBack + throwsCost(costs, branch.positions);
    return { bound, chains: cheapest.chains(trackOf, isShared), reached, tolls, toSource, toInput };
  };

  /** How much the bound would rise if the voice had to use its current rows. */
  const riseOf = (voice: number): number => {
    let least = Infinity;
    for (let column = 0, at = voice * columns; column < columns; column += 1, at += 1) {
      const track = columnTrack[column]!;
      const row = voice * tracks + track;
      const price = track < 0 ? table[at]! : (columnShared[column] ? cheapest.shared : cheapest.alone)[row]!;
      least = Math.min(least, price - solver.columnPrice[column]!);
    }
    return least - solver.rowPrice[voice]!;
  };

  const forced = ({ chains }: Relaxed, room: number) => {
    const found: [number, number][] = [];
    for (let voice = 0; voice < voices; voice += 1) {
      if (chains[4 * voice]! < 0) continue;
      const [pack, source, input] = chains.subarray(4 * voice, 4 * voice + 3);
      for (const node of [pack!, packs + source!, packs + sources + input!]) {
        cheapest.walkWithout(voice, node);
        if (riseOf(voice) >= room) found.push([voice, node]);
      }
      cheapest.walkWithout(voice, -1);
    }
    return found;
  };

  return { relax, forced };
}
