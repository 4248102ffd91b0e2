import { fail, ok, type Result } from '../../shared/result.ts';
import {
  type Carrier,
  type Guards,
  type OccupiedBlock,
  spacingBetween,
  type TuningRange,
} from '../carrier.ts';
import {
  carriersProblem,
  guardsProblem,
  occupiedProblem,
  type RadioProblem,
  rangesProblem,
  spacingProblem,
} from '../check-input.ts';
import { isInBlock, outsideBlock } from '../intermodulation/analysis.ts';
import { FAMILIES, type Family } from '../intermodulation/hit.ts';
import { type CentreSet, centreSets } from './forbidden-centres.ts';
import { type Margins, marginsOf, marksFor, tighten, tightenByMarks } from './margin-map.ts';

export interface CleanPosition {
  readonly khz: number;
  /** The least room beyond any guard, from 0 to 1000 kHz; greater distances count as 1000. */
  readonly marginKhz: number;
  /** What limits the room; 'nothing-near' if nothing is within 1000 kHz of its guard. */
  readonly limitedBy: Family | 'tv-edge' | 'nothing-near';
}

export interface NewCarrier {
  readonly spacingKhz?: number;
}

/** Stands for the new pack in a problem about its spacing. */
export const NEW_PACK_ID = 'new-pack';

const LIMITS = [...FAMILIES, 'tv-edge'] as const;
const TV_EDGE = LIMITS.indexOf('tv-edge');
/** How many carriers' products are marked per step of the generator. */
const CARRIERS_A_STEP = 16;

/**
 * The free raster positions for one more pack that transmits and is received: neither hit nor causing hits,
 * outside the occupied blocks, most room first, then lowest first. Products on their own sources do not
 * count. `cleanPositions([], guards, [{ fromKhz: 470_000, toKhz: 470_025, rasterKhz: 25 }], [])` → both
 * positions, 'nothing-near'
 */
export function cleanPositions(
  carriers: readonly Carrier[],
  guards: Guards,
  ranges: readonly TuningRange[],
  occupied: readonly OccupiedBlock[],
  pack: NewCarrier = {},
): Result<readonly CleanPosition[], RadioProblem> {
  const steps = cleanPositionsInSteps(carriers, guards, ranges, occupied, pack);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same in short steps, so that a screen stays responsive; yields the fraction done, from 0 to 1. */
export function* cleanPositionsInSteps(
  carriers: readonly Carrier[],
  guards: Guards,
  ranges: readonly TuningRange[],
  occupied: readonly OccupiedBlock[],
  pack: NewCarrier = {},
): Generator<number, Result<readonly CleanPosition[], RadioProblem>> {
  const problem =
    carriersProblem(carriers) ??
    spacingProblem(NEW_PACK_ID, pack.spacingKhz) ??
    guardsProblem(guards) ??
    rangesProblem(ranges) ??
    occupiedProblem(occupied);
  if (problem) return fail(problem);
  const active = carriers.filter(({ victim, transmitting }) => victim || transmitting);
  const sets = centreSets(guards);
  const found = new Map<number, CleanPosition>();
  for (const [done, range] of ranges.entries()) {
    const margins = marginsOf(range);
    tightenBySpacing(margins, active, guards, pack);
    tightenByBlocks(margins, occupied, guards.tvEdgeKhz);
    for (const [set, centres] of sets.entries())
      for (const share of tightenByCentres(margins, active, centres))
        yield (done + (set + share) / sets.length) / ranges.length;
    for (const position of cleanOnes(margins)) found.set(position.khz, position);
  }
  return ok([...found.values()].sort((a, b) => b.marginKhz - a.marginKhz || a.khz - b.khz));
}

function* tightenByCentres(
  margins: Margins,
  active: readonly Carrier[],
  { family, scale, guardKhz, markFrom }: CentreSet,
): Generator<number> {
  const marks = marksFor(margins, scale, guardKhz);
  for (let place = 0; place < active.length; place += 1) {
    markFrom(active, place, marks);
    if (place % CARRIERS_A_STEP === CARRIERS_A_STEP - 1) yield place / active.length;
  }
  tightenByMarks(margins, marks, guardKhz, family);
}

function tightenBySpacing(
  margins: Margins,
  active: readonly Carrier[],
  guards: Guards,
  pack: NewCarrier,
): void {
  for (const carrier of active) {
    const spacing = spacingBetween(carrier, pack, guards);
    for (let at = 0; spacing > 0 && at < margins.khz.length; at += 1)
      tighten(margins, at, Math.abs(margins.khz[at]! - carrier.khz) - spacing, 0);
  }
}

function tightenByBlocks(margins: Margins, occupied: readonly OccupiedBlock[], guardKhz: number): void {
  for (const block of occupied)
    margins.khz.forEach((khz, at) => {
      const room = outsideBlock(block, khz) - guardKhz;
      tighten(margins, at, isInBlock(block, khz, guardKhz) ? Math.min(room, -1) : room, TV_EDGE);
    });
}

function cleanOnes({ khz, margin, limit }: Margins): CleanPosition[] {
  const clean: CleanPosition[] = [];
  khz.forEach((at, spot) => {
    if (margin[spot]! >= 0)
      clean.push({ khz: at, marginKhz: margin[spot]!, limitedBy: LIMITS[limit[spot]!] ?? 'nothing-near' });
  });
  return clean;
}

/**
 * The best positions not next to a better one: best first, at least `apartKhz` apart, at most so many. A gap
 * in the spectrum has dozens of good raster positions, and one of them is enough.
 */
export function spreadOut(
  positions: readonly CleanPosition[],
  apartKhz: number,
  most: number,
): CleanPosition[] {
  const chosen: CleanPosition[] = [];
  for (const position of positions) {
    if (chosen.length >= most) break;
    if (chosen.every(({ khz }) => Math.abs(khz - position.khz) >= apartKhz)) chosen.push(position);
  }
  return chosen;
}
