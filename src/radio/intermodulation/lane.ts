import type { Carrier } from '../carrier.ts';

/** Some carriers, sorted by a multiple of their frequency; `place` is the index in the carrier list. */
export interface Lane {
  readonly khz: Int32Array;
  readonly place: Int32Array;
}

/** The carriers that pass, sorted by `factor` times their frequency; -1 sorts from the top down. */
export function laneOf(carriers: readonly Carrier[], keep: (carrier: Carrier) => boolean, factor = 1): Lane {
  const places = carriers.flatMap((carrier, place) => (keep(carrier) ? [place] : []));
  const value = (place: number): number => carriers[place]!.khz * factor;
  places.sort((a, b) => value(a) - value(b) || a - b);
  return { khz: Int32Array.from(places, value), place: Int32Array.from(places) };
}

export const transmits = ({ transmitting }: Carrier): boolean => transmitting;
export const listens = ({ victim }: Carrier): boolean => victim;

export type OnWindow = (lo: number, hi: number, subtracted: number, productKhz: number) => void;

/**
 * Walks the products `sum - x` for every x of a lane, and for each product with listeners nearer than the
 * guard calls back with the run of listeners [lo, hi). As x rises the product falls, so two pointers into the
 * listeners only move down: one pass over each lane. The guard must be above 0. Up to two indexes (the other
 * sources) are skipped.
 */
export function sweep(
  sum: number,
  subtract: Lane,
  skipA: number,
  skipB: number,
  guard: number,
  listeners: Lane,
  onWindow: OnWindow,
): void {
  const at = listeners.khz;
  let lo = at.length;
  let hi = at.length;
  for (let step = 0; step < subtract.khz.length; step += 1) {
    const product = sum - subtract.khz[step]!;
    while (hi > 0 && at[hi - 1]! >= product + guard) hi -= 1;
    if (hi === 0) return;
    while (lo > 0 && at[lo - 1]! > product - guard) lo -= 1;
    if (lo >= hi) continue;
    const subtracted = subtract.place[step]!;
    if (subtracted !== skipA && subtracted !== skipB) onWindow(lo, hi, subtracted, product);
  }
}
