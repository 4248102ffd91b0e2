import type { Carrier, Guards } from '../carrier.ts';
import type { AnalysisOptions, Counts } from './analysis.ts';
import { FAMILIES } from './hit.ts';
import { type Lanes, walkProducts, walkSpacing } from './walk-products.ts';

/**
 * Counts hits without visiting each: a window adds 1 at its start and subtracts 1 at its end, and a running
 * sum gives every listener's count. Used when carriers are so dense that billions of products hit.
 */
export function countExactly(
  carriers: readonly Carrier[],
  lanes: Lanes,
  guards: Guards,
  { includeOwnVictims }: AnalysisOptions,
): Counts {
  const { place } = lanes.listeners;
  const laneSpot = new Int32Array(carriers.length).fill(-1);
  place.forEach((carrier, at) => {
    laneSpot[carrier] = at;
  });
  const steps = FAMILIES.map(() => new Float64Array(place.length + 1));
  const own = FAMILIES.map(() => new Float64Array(place.length));
  const takeOwn = (family: number, source: number, lo: number, hi: number): void => {
    const at = laneSpot[source]!;
    if (at >= lo && at < hi) own[family]![at]! += 1;
  };
  walkProducts(lanes, guards, (family, a, b, c, _product, lo, hi) => {
    steps[family]![lo]! += 1;
    steps[family]![hi]! -= 1;
    if (includeOwnVictims) return;
    takeOwn(family, a, lo, hi);
    takeOwn(family, b, lo, hi);
    if (family === 2) takeOwn(family, c, lo, hi);
  });
  return addUp(carriers, guards, place, steps, own);
}

function addUp(
  carriers: readonly Carrier[],
  guards: Guards,
  place: Int32Array,
  steps: readonly Float64Array[],
  own: readonly Float64Array[],
): Counts {
  const byFamily = FAMILIES.map(() => 0);
  const onCarrier = carriers.map(() => 0);
  FAMILIES.forEach((_, family) => {
    let running = 0;
    place.forEach((carrier, at) => {
      running += steps[family]![at]!;
      const hits = running - own[family]![at]!;
      byFamily[family]! += hits;
      onCarrier[carrier]! += hits;
    });
  });
  walkSpacing(carriers, guards, (source, victim) => {
    byFamily[0]! += 1;
    onCarrier[victim]! += 1;
    if (carriers[source]!.victim && carriers[victim]!.transmitting) onCarrier[source]! += 1;
  });
  return { byFamily, onCarrier };
}
