import { augmentingPaths } from '../../matching/augmenting-paths.ts';
import type { Chains, StageCosts } from '../network/stage-costs.ts';

/** The layers of a chain, as indexes into `Chains`. */
export const PACK = 0;
export const SOURCE = 1;
export const INPUT = 2;
export const TRACK = 3;

export interface VoiceMatching {
  /** Gives every voice its own column at least cost, or leaves it out if allowed; false if impossible. */
  match(width: number, cost: (voice: number, column: number) => number): boolean;
  /** The column of a voice after `match`, -1 if it is left out. */
  columnOf(voice: number): number;
  /** Writes the columns into one layer of the chains. */
  take(chains: Chains, layer: number): void;
}

/** Repeated assignment of all voices to something, in memory allocated once. */
export function voiceMatching(costs: StageCosts): VoiceMatching {
  const { voices, packs, sources, inputs, tracks } = costs;
  const places = costs.gangSlots.reduce((sum, slots) => sum + Math.min(slots, voices), tracks);
  const outLevel = costs.outPlaces.flatMap((count, level) => new Array<number>(count).fill(level));
  const most = Math.max(packs, sources, inputs, places, voices) + outLevel.length;
  const solver = augmentingPaths(voices, most);
  const table = new Float64Array(voices * most);
  let matched = 0;

  const match = (width: number, cost: (voice: number, column: number) => number): boolean => {
    const columns = width + outLevel.length;
    matched = width;
    if (columns < voices) return false;
    for (let voice = 0, at = 0; voice < voices; voice += 1) {
      for (let column = 0; column < width; column += 1, at += 1) table[at] = cost(voice, column);
      for (let place = 0; place < outLevel.length; place += 1, at += 1) {
        table[at] = outLevel[place] === costs.levelOf[voice] ? costs.out[voice]! : Infinity;
      }
    }
    return solver.run(table, voices, columns);
  };

  const columnOf = (voice: number): number => {
    const column = solver.columnOf[voice]!;
    return column < matched ? column : -1;
  };

  const take = (chains: Chains, layer: number): void => {
    for (let voice = 0; voice < voices; voice += 1) {
      const column = columnOf(voice);
      if (column < 0) chains.fill(-1, 4 * voice, 4 * voice + 4);
      else chains[4 * voice + layer] = column;
    }
  };

  return { match, columnOf, take };
}

/** How many voices end on each track. */
export function countTracks(chains: Chains, tracks: number): Int32Array {
  const sharing = new Int32Array(tracks);
  for (let at = TRACK; at < chains.length; at += 4) if (chains[at]! >= 0) sharing[chains[at]!]! += 1;
  return sharing;
}
