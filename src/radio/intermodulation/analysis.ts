import type { Carrier, Guards, OccupiedBlock } from '../carrier.ts';
import {
  FAMILIES,
  type Family,
  familyOf,
  firstSourceOf,
  type Hit,
  type PackedHit,
  unpackHit,
  victimOf,
} from './hit.ts';

export interface AnalysisOptions {
  /** Also count a product that falls on one of its own sources (A+B-C near C, and so on). Off by default. */
  readonly includeOwnVictims: boolean;
  readonly occupied: readonly OccupiedBlock[];
  /** How many hits of each family are listed, nearest first; the counts are always exact. */
  readonly listedPerFamily: number;
  /** How many hits are held at all. Beyond it only the first are listed, and `recheck` starts afresh. */
  readonly mostHeld: number;
}

export const DEFAULT_OPTIONS: AnalysisOptions = {
  includeOwnVictims: false,
  occupied: [],
  listedPerFamily: 250,
  mostHeld: 200_000,
};

/** A carrier inside an occupied block (`distanceKhz` 0) or closer to its edge than the guard. */
export interface EdgeHit {
  readonly carrierId: string;
  readonly blockName: string;
  readonly distanceKhz: number;
}

export interface Analysis {
  readonly carriers: readonly Carrier[];
  readonly guards: Guards;
  readonly options: AnalysisOptions;
  /** By family, nearest first. */
  readonly hits: readonly Hit[];
  readonly counts: Readonly<Record<Family, number>>;
  /** Hits on each carrier, in list order; a spacing hit counts on each side that listens. */
  readonly hitsOnCarrier: readonly number[];
  readonly edgeHits: readonly EdgeHit[];
  /** Whether `hits` is complete. */
  readonly listIsComplete: boolean;
  /** Every hit, packed and sorted, for `recheck`; undefined if there were too many to hold. */
  readonly held: Float64Array | undefined;
}

export interface Counts {
  readonly byFamily: readonly number[];
  readonly onCarrier: readonly number[];
}

/** The nearest hits of each family, unpacked. `sorted` by family and then by distance. */
function listHits(sorted: Float64Array, carriers: readonly Carrier[], perFamily: number): Hit[] {
  const listed: Hit[] = [];
  const taken = FAMILIES.map(() => 0);
  for (const hit of sorted) {
    const family = familyOf(hit);
    if (taken[family]! >= perFamily) continue;
    taken[family]! += 1;
    listed.push(unpackHit(hit, carriers));
  }
  return listed;
}

/** Counts hits one by one; exact if all of them are held. */
export function countHeld(hits: Float64Array, carriers: readonly Carrier[]): Counts {
  const byFamily = FAMILIES.map(() => 0);
  const onCarrier = carriers.map(() => 0);
  for (const hit of hits) {
    const family = familyOf(hit);
    byFamily[family]! += 1;
    onCarrier[victimOf(hit)]! += 1;
    if (family === 0) countOtherSide(hit, carriers, onCarrier);
  }
  return { byFamily, onCarrier };
}

function countOtherSide(hit: PackedHit, carriers: readonly Carrier[], onCarrier: number[]): void {
  const source = firstSourceOf(hit);
  if (carriers[source]!.victim && carriers[victimOf(hit)]!.transmitting) onCarrier[source]! += 1;
}

/** How far a frequency is outside a block; 0 inside it. */
export const outsideBlock = ({ fromKhz, toKhz }: OccupiedBlock, khz: number): number =>
  Math.max(fromKhz - khz, khz - toKhz, 0);

/** Inside a block is always a hit; exactly on its edge only if a guard is set. */
export const isInBlock = (block: OccupiedBlock, khz: number, guardKhz: number): boolean =>
  khz > block.fromKhz - guardKhz && khz < block.toKhz + guardKhz;

const edgeHitsOf = (
  carriers: readonly Carrier[],
  guards: Guards,
  occupied: readonly OccupiedBlock[],
): EdgeHit[] =>
  carriers
    .filter(({ victim, transmitting }) => victim || transmitting)
    .flatMap(({ id, khz }) =>
      occupied
        .filter((block) => isInBlock(block, khz, guards.tvEdgeKhz))
        .map((block) => ({ carrierId: id, blockName: block.name, distanceKhz: outsideBlock(block, khz) })),
    );

/** Builds an analysis from its sorted hits and, if not all could be held, from separate counts. */
export function assemble(
  carriers: readonly Carrier[],
  guards: Guards,
  options: AnalysisOptions,
  sorted: Float64Array,
  counts: Counts,
  allAreHeld: boolean,
): Analysis {
  const hits = listHits(sorted, carriers, options.listedPerFamily);
  const total = counts.byFamily.reduce((sum, count) => sum + count, 0);
  const [spacing = 0, twoTone = 0, threeTone = 0, fifth = 0] = counts.byFamily;
  return {
    carriers,
    guards,
    options,
    hits,
    counts: {
      spacing,
      'two-tone-third': twoTone,
      'three-tone-third': threeTone,
      'two-tone-fifth': fifth,
    },
    hitsOnCarrier: counts.onCarrier,
    edgeHits: edgeHitsOf(carriers, guards, options.occupied),
    listIsComplete: hits.length === total,
    held: allAreHeld ? sorted : undefined,
  };
}
