import { packHit } from './hit.ts';
import type { Lane } from './lane.ts';

/** A growing list of packed hits that stops at its limit and reports it. */
export interface HitList {
  readonly hits: number[];
  isFull: boolean;
}

export const newHitList = (): HitList => ({ hits: [], isFull: false });

export function addHit(
  list: HitList,
  most: number,
  family: number,
  distance: number,
  a: number,
  b: number,
  c: number,
  d: number,
): void {
  if (list.hits.length >= most) list.isFull = true;
  else list.hits.push(packHit(family, distance, a, b, c, d));
}

/** Adds one product's hits on the listeners [lo, hi); its own sources only if own victims are included. */
export function addWindow(
  list: HitList,
  most: number,
  includeOwn: boolean,
  listeners: Lane,
  family: number,
  a: number,
  b: number,
  c: number,
  product: number,
  lo: number,
  hi: number,
): void {
  for (let at = lo; at < hi && !list.isFull; at += 1) {
    const d = listeners.place[at]!;
    const isOwn = d === a || d === b || (family === 2 && d === c);
    if (includeOwn || !isOwn) addHit(list, most, family, Math.abs(product - listeners.khz[at]!), a, b, c, d);
  }
}

export const sortHits = (list: HitList): Float64Array => Float64Array.from(list.hits).sort();
