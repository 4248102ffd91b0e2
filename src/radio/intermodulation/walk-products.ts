import type { Carrier, Guards } from '../carrier.ts';
import { spacingBetween } from '../carrier.ts';
import { type Lane, laneOf, listens, type OnWindow, sweep, transmits } from './lane.ts';

export type OnProduct = (
  family: number,
  a: number,
  b: number,
  c: number,
  product: number,
  lo: number,
  hi: number,
) => void;

export interface Lanes {
  readonly sources: Lane;
  readonly doubled: Lane;
  readonly listeners: Lane;
}

export const lanesOf = (carriers: readonly Carrier[]): Lanes => ({
  sources: laneOf(carriers, transmits),
  doubled: laneOf(carriers, transmits, 2),
  listeners: laneOf(carriers, listens),
});

/**
 * Calls back for every product with listeners [lo, hi) nearer than its guard; unordered pairs A, B come once,
 * A first in the list. Stops early, between two carriers, once `isEnough`.
 */
export function walkProducts(
  lanes: Lanes,
  guards: Guards,
  onProduct: OnProduct,
  isEnough: () => boolean = () => false,
): void {
  const { sources } = lanes;
  for (let at = 0; at < sources.khz.length && !isEnough(); at += 1) {
    walkTwoTone(lanes, guards, sources.place[at]!, sources.khz[at]!, onProduct);
    if (guards.threeToneThirdKhz > 0) walkThreeTone(lanes, guards.threeToneThirdKhz, at, onProduct);
  }
}

/** 2A-B and 3A-2B for one A and every B. */
export function walkTwoTone(
  { sources, doubled, listeners }: Pick<Lanes, 'sources' | 'doubled' | 'listeners'>,
  guards: Guards,
  a: number,
  khz: number,
  onProduct: OnProduct,
): void {
  const report =
    (family: number): OnWindow =>
    (lo, hi, b, product) =>
      onProduct(family, a, b, 0, product, lo, hi);
  const { twoToneThirdKhz: third, twoToneFifthKhz: fifth } = guards;
  if (third > 0) sweep(2 * khz, sources, a, a, third, listeners, report(1));
  if (fifth > 0) sweep(3 * khz, doubled, a, a, fifth, listeners, report(3));
}

function walkThreeTone({ sources, listeners }: Lanes, guard: number, at: number, onProduct: OnProduct): void {
  const one = sources.place[at]!;
  let a = 0;
  let b = 0;
  const report: OnWindow = (lo, hi, c, product) => onProduct(2, a, b, c, product, lo, hi);
  for (let other = at + 1; other < sources.khz.length; other += 1) {
    const two = sources.place[other]!;
    a = Math.min(one, two);
    b = Math.max(one, two);
    sweep(sources.khz[at]! + sources.khz[other]!, sources, a, b, guard, listeners, report);
  }
}

/** Calls back once for each pair nearer than its spacing if one side transmits and the other listens. */
export function walkSpacing(
  carriers: readonly Carrier[],
  guards: Guards,
  onPair: (source: number, victim: number, distanceKhz: number) => void,
): void {
  for (let a = 0; a < carriers.length; a += 1)
    for (let b = a + 1; b < carriers.length; b += 1) checkSpacing(carriers, guards, a, b, onPair);
}

/** One pair, a before b in the list: the transmitting side is the source; a, if both do both. */
export function checkSpacing(
  carriers: readonly Carrier[],
  guards: Guards,
  a: number,
  b: number,
  onPair: (source: number, victim: number, distanceKhz: number) => void,
): void {
  const one = carriers[a]!;
  const two = carriers[b]!;
  const distance = Math.abs(one.khz - two.khz);
  if (distance >= spacingBetween(one, two, guards)) return;
  if (one.transmitting && two.victim) onPair(a, b, distance);
  else if (two.transmitting && one.victim) onPair(b, a, distance);
}
