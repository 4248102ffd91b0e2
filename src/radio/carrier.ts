/** Something that radiates, or a frequency that is received; a pack with its receiver channel is both. */
export interface Carrier {
  readonly id: string;
  readonly name: string;
  readonly khz: number;
  /** The spacing this carrier's equipment needs; by default the plan's `carrierKhz`. */
  readonly spacingKhz?: number;
  /** A tuned receiver channel listens here. */
  readonly victim: boolean;
  readonly transmitting: boolean;
}

/** Distances to keep, in whole kHz. A distance equal to its guard is clean; 0 disables that test. */
export interface Guards {
  readonly carrierKhz: number;
  readonly twoToneThirdKhz: number;
  readonly threeToneThirdKhz: number;
  readonly twoToneFifthKhz: number;
  readonly tvEdgeKhz: number;
}

/** Spectrum used by somebody else: a TV channel, or anything the mixer typed. */
export interface OccupiedBlock {
  readonly name: string;
  readonly fromKhz: number;
  readonly toKhz: number;
}

/** Where a pack can be tuned: every `rasterKhz` from `fromKhz` up to and including `toKhz`. */
export interface TuningRange {
  readonly fromKhz: number;
  readonly toKhz: number;
  readonly rasterKhz: number;
}

/** Common practice, no source: no standard fixes these, so all of them can be changed. */
export const SUGGESTED_GUARDS: Guards = {
  carrierKhz: 400,
  twoToneThirdKhz: 100,
  threeToneThirdKhz: 50,
  twoToneFifthKhz: 0,
  tvEdgeKhz: 200,
};

export const WIDEST_GUARD_KHZ = 10_000;
export const MOST_CARRIERS = 512;
/** The widest single range a search covers: 2 GHz. */
export const WIDEST_RANGE_KHZ = 2_000_000;

/** The spacing to keep between two carriers: the wider of the two. `spacingBetween(a, b, guards)` → 400 */
export const spacingBetween = (
  a: Pick<Carrier, 'spacingKhz'>,
  b: Pick<Carrier, 'spacingKhz'>,
  guards: Guards,
): number => Math.max(a.spacingKhz ?? guards.carrierKhz, b.spacingKhz ?? guards.carrierKhz);
