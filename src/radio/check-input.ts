import { checkKhz, type FrequencyProblem } from '../facts/kinds/frequency.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import {
  type Carrier,
  type Guards,
  MOST_CARRIERS,
  type OccupiedBlock,
  type TuningRange,
  WIDEST_GUARD_KHZ,
  WIDEST_RANGE_KHZ,
} from './carrier.ts';

export type RadioProblem =
  | FrequencyProblem
  | { readonly code: 'frequency-outside-ranges'; readonly khz: number }
  | { readonly code: 'frequency-off-raster'; readonly khz: number }
  | { readonly code: 'frequency-taken'; readonly khz: number; readonly by: string }
  | { readonly code: 'carrier-named-twice'; readonly id: string }
  | { readonly code: 'carrier-unknown'; readonly id: string }
  | { readonly code: 'carriers-too-many'; readonly count: number; readonly most: number }
  | {
      readonly code: 'guard-unusable';
      readonly guard: string;
      readonly khz: number;
      readonly mostKhz: number;
    }
  | { readonly code: 'spacing-unusable'; readonly id: string; readonly khz: number; readonly mostKhz: number }
  | { readonly code: 'range-upside-down'; readonly fromKhz: number; readonly toKhz: number }
  | {
      readonly code: 'range-too-wide';
      readonly fromKhz: number;
      readonly toKhz: number;
      readonly mostKhz: number;
    }
  | { readonly code: 'raster-unusable'; readonly rasterKhz: number }
  | { readonly code: 'ranges-missing' }
  | { readonly code: 'count-unusable'; readonly count: number; readonly most: number };

type Check = RadioProblem | undefined;

const first = (checks: Iterable<Check>): Check => {
  for (const check of checks) if (check) return check;
  return undefined;
};

/** Problems reach the screen, which must never show NaN or Infinity. */
const finite = (value: number): number => (Number.isFinite(value) ? value : 0);

const khzProblem = (khz: number): Check => {
  const checked = checkKhz(khz);
  return checked.ok ? undefined : checked.problem;
};

const distanceIsUsable = (khz: number): boolean =>
  Number.isSafeInteger(khz) && khz >= 0 && khz <= WIDEST_GUARD_KHZ;

/** A carrier's own spacing is missing, or whole kHz from 0 to 10 MHz. */
export const spacingProblem = (id: string, khz: number | undefined): Check =>
  khz === undefined || distanceIsUsable(khz)
    ? undefined
    : { code: 'spacing-unusable', id, khz: finite(khz), mostKhz: WIDEST_GUARD_KHZ };

/** Why a list of carriers cannot be analysed; equal frequencies are allowed, they are hits. */
export function carriersProblem(carriers: readonly Carrier[]): Check {
  if (carriers.length > MOST_CARRIERS)
    return { code: 'carriers-too-many', count: carriers.length, most: MOST_CARRIERS };
  const ids = new Set<string>();
  for (const { id, khz, spacingKhz } of carriers) {
    if (ids.has(id)) return { code: 'carrier-named-twice', id };
    ids.add(id);
    const problem = khzProblem(khz) ?? spacingProblem(id, spacingKhz);
    if (problem) return problem;
  }
  return undefined;
}

export const guardsProblem = (guards: Guards): Check =>
  first(
    Object.entries(guards).map(([guard, khz]) =>
      distanceIsUsable(khz)
        ? undefined
        : { code: 'guard-unusable', guard, khz: finite(khz), mostKhz: WIDEST_GUARD_KHZ },
    ),
  );

const spanProblem = (fromKhz: number, toKhz: number): Check => {
  if (toKhz < fromKhz) return { code: 'range-upside-down', fromKhz, toKhz };
  if (toKhz - fromKhz > WIDEST_RANGE_KHZ)
    return { code: 'range-too-wide', fromKhz, toKhz, mostKhz: WIDEST_RANGE_KHZ };
  return undefined;
};

/** Ranges run upwards, at most 2 GHz wide, with a raster of at least a whole kHz; at least one. */
export function rangesProblem(ranges: readonly TuningRange[]): Check {
  if (ranges.length === 0) return { code: 'ranges-missing' };
  return first(
    ranges.map(
      ({ fromKhz, toKhz, rasterKhz }) =>
        khzProblem(fromKhz) ??
        khzProblem(toKhz) ??
        spanProblem(fromKhz, toKhz) ??
        (Number.isSafeInteger(rasterKhz) && rasterKhz > 0
          ? undefined
          : { code: 'raster-unusable', rasterKhz: finite(rasterKhz) }),
    ),
  );
}

export const occupiedProblem = (occupied: readonly OccupiedBlock[]): Check =>
  first(
    occupied.map(
      ({ fromKhz, toKhz }) => khzProblem(fromKhz) ?? khzProblem(toKhz) ?? spanProblem(fromKhz, toKhz),
    ),
  );

const holds = ({ fromKhz, toKhz }: TuningRange, khz: number): boolean => khz >= fromKhz && khz <= toKhz;

/**
 * A new frequency for a carrier must be valid, inside the ranges and on their raster (if ranges are known),
 * and not taken by another carrier. `checkNewKhz(470_100, [], [])` → ok 470100
 */
export function checkNewKhz(
  khz: number,
  others: readonly Carrier[],
  ranges: readonly TuningRange[],
): Result<number, RadioProblem> {
  const problem = khzProblem(khz) ?? rangeFit(khz, ranges);
  if (problem) return fail(problem);
  const taken = others.find((other) => other.khz === khz);
  return taken ? fail({ code: 'frequency-taken', khz, by: taken.id }) : ok(khz);
}

function rangeFit(khz: number, ranges: readonly TuningRange[]): Check {
  const holding = ranges.filter((range) => holds(range, khz));
  if (ranges.length > 0 && holding.length === 0) return { code: 'frequency-outside-ranges', khz };
  const onRaster = holding.some(({ fromKhz, rasterKhz }) => (khz - fromKhz) % rasterKhz === 0);
  return holding.length > 0 && !onRaster ? { code: 'frequency-off-raster', khz } : undefined;
}
