import type { ChainNetwork } from './chain-network.ts';
import type { StageUnits } from './stage-costs.ts';

/** Voices by priority: level 0 holds the most important. */
export interface Levels {
  readonly of: readonly number[];
  readonly count: number;
}

export interface OrderUnits {
  readonly units: StageUnits;
  /** One digit for each thing counted, most important first; `read` splits a cost into them. */
  readonly read: (cost: number) => readonly number[];
  readonly fits: boolean;
}

export function priorityLevels({ voices }: ChainNetwork): Levels {
  const priorities = [...new Set(voices.map(({ priority }) => priority))].sort((a, b) => a - b);
  return { of: voices.map(({ priority }) => priorities.indexOf(priority)), count: priorities.length };
}

/** How many voices of each level the test holds for. */
export function countByLevel(levels: Levels, holds: (voice: number) => boolean): number[] {
  const counts = new Array<number>(levels.count).fill(0);
  levels.of.forEach((level, voice) => {
    if (holds(voice)) counts[level]! += 1;
  });
  return counts;
}

/** The first stage: only who is left out counts. */
export function recordingUnits({ voices }: ChainNetwork, levels: Levels): OrderUnits {
  const sizes = countByLevel(levels, () => true);
  const radix = mixedRadix(sizes);
  return {
    ...radix,
    units: {
      ...NOTHING,
      levelOf: levels.of,
      outPlaces: sizes,
      out: Float64Array.from(levels.of, (level) => radix.unit[level]!),
      gang: new Float64Array(voices.length),
    },
  };
}

/** The second stage: each level leaves out as many as the first stage found, and who is in a gang counts. */
export function gangingUnits(levels: Levels, leftOut: readonly number[]): OrderUnits {
  const sizes = countByLevel(levels, () => true);
  const radix = mixedRadix(sizes.map((size, level) => size - leftOut[level]!));
  return {
    ...radix,
    units: {
      ...NOTHING,
      levelOf: levels.of,
      outPlaces: leftOut,
      out: new Float64Array(levels.of.length),
      gang: Float64Array.from(levels.of, (level) => radix.unit[level]!),
    },
  };
}

/** The third stage: gangs are fixed likewise, and packs, bench, tracks and extras count, in this order. */
export function movingUnits(
  network: ChainNetwork,
  levels: Levels,
  leftOut: readonly number[],
  ganged: readonly number[],
): OrderUnits {
  const recorded = countByLevel(levels, () => true).map((size, level) => size - leftOut[level]!);
  const radix = mixedRadix([...openDigits(ganged, recorded), ...largest(network)]);
  const [packs, bench, track, extras] = radix.unit.slice(levels.count) as [number, number, number, number];
  const gang = Float64Array.from(levels.of, (level) => {
    if (ganged[level] === 0) return Infinity;
    return ganged[level] === recorded[level] ? 0 : radix.unit[level]!;
  });
  const out = Float64Array.from(network.voices, ({ lastTrack }) => (lastTrack === undefined ? 0 : track));
  return {
    ...radix,
    units: {
      packs,
      bench,
      track,
      extras,
      grain: track,
      levelOf: levels.of,
      outPlaces: leftOut,
      out,
      gang,
    },
  };
}

const NOTHING = { packs: 0, bench: 0, track: 0, extras: 0, grain: 1 };

/** A level with none or all in a gang is decided and needs no digit. */
const openDigits = (counts: readonly number[], sizes: readonly number[]): number[] =>
  counts.map((count, level) => (count > 0 && count < sizes[level]! ? sizes[level]! : 0));

/** The maximum of packs, bench, tracks and extras. */
function largest({ voices, banks, paths, ...network }: ChainNetwork): number[] {
  const most = (list: Iterable<number>) =>
    [...list].reduce((high, cost) => (cost === Infinity ? high : Math.max(high, cost)), 0);
  const total = (key: 'bench' | 'extras', tune: Float64Array, feed: Float64Array) =>
    voices.length * (most(tune) + most(feed) + most(paths.map((path) => path[key]))) +
    banks.reduce((sum, bank) => sum + bank[key], 0);
  return [
    voices.length * most(network.wear),
    total('bench', network.tune, network.feed),
    voices.length,
    total('extras', network.tuneExtras, network.feedExtras) + voices.length * most(network.wearExtras),
  ];
}

/** Units for digits of these sizes, most important first: a larger one outweighs all after it. */
function mixedRadix(sizes: readonly number[]) {
  const unit = sizes.map((_size, at) =>
    sizes.slice(at + 1).reduce((product, size) => product * (size + 1), 1),
  );
  const read = (cost: number): number[] => {
    let rest = cost;
    return unit.map((worth, at) => {
      if (sizes[at] === 0) return 0;
      const digit = Math.min(sizes[at]!, Math.floor(rest / worth));
      rest -= digit * worth;
      return digit;
    });
  };
  const fits = (unit[0] ?? 1) * ((sizes[0] ?? 0) + 1) < 2 ** 46;
  return { unit, read, fits };
}
