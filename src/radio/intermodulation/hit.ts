import type { Carrier } from '../carrier.ts';

/** spacing: A itself; two-tone third: 2A-B; three-tone third: A+B-C; two-tone fifth: 3A-2B. */
export type Family = 'spacing' | 'two-tone-third' | 'three-tone-third' | 'two-tone-fifth';

export const FAMILIES: readonly Family[] = [
  'spacing',
  'two-tone-third',
  'three-tone-third',
  'two-tone-fifth',
];

/** A product or carrier closer to a victim than its guard. Sources in the order of the formula. */
export interface Hit {
  readonly family: Family;
  readonly sourceIds: readonly string[];
  readonly productKhz: number;
  readonly victimId: string;
  readonly distanceKhz: number;
}

/**
 * A hit as one number, 2^27 apart: above, family (2 bits), distance (14) and source a (9); below, sources b,
 * c and victim d (9 each), all as indexes into the carrier list. Numbers sort without a comparator and take
 * little memory. Sources a family lacks are 0.
 */
export type PackedHit = number;

const HALF = 2 ** 27;
const PLACE_BITS = 9;
const PLACE = 2 ** PLACE_BITS - 1;
const FAMILY_SHIFT = 23;

export const packHit = (
  family: number,
  distanceKhz: number,
  a: number,
  b: number,
  c: number,
  d: number,
): PackedHit =>
  ((family << FAMILY_SHIFT) | (distanceKhz << PLACE_BITS) | a) * HALF +
  ((b << (2 * PLACE_BITS)) | (c << PLACE_BITS) | d);

const above = (hit: PackedHit): number => (hit / HALF) | 0;
const under = (hit: PackedHit): number => hit - above(hit) * HALF;

export const familyOf = (hit: PackedHit): number => above(hit) >> FAMILY_SHIFT;
export const victimOf = (hit: PackedHit): number => under(hit) & PLACE;
export const firstSourceOf = (hit: PackedHit): number => above(hit) & PLACE;

/** The indexes of a, b and c, as many as the hit's family has sources. */
export function sourcesOf(hit: PackedHit): number[] {
  const a = firstSourceOf(hit);
  const b = under(hit) >> (2 * PLACE_BITS);
  const family = familyOf(hit);
  if (family === 0) return [a];
  return family === 2 ? [a, b, (under(hit) >> PLACE_BITS) & PLACE] : [a, b];
}

/** Whether the carrier at an index is a source or the victim of a hit. */
export function involves(hit: PackedHit, place: number): boolean {
  const high = above(hit);
  const low = hit - high * HALF;
  if ((high & PLACE) === place || (low & PLACE) === place) return true;
  const family = high >> FAMILY_SHIFT;
  if (family === 0) return false;
  return low >> (2 * PLACE_BITS) === place || (family === 2 && ((low >> PLACE_BITS) & PLACE) === place);
}

const productOf = (family: Family, khz: readonly number[]): number => {
  const [a = 0, b = 0, c = 0] = khz;
  switch (family) {
    case 'spacing':
      return a;
    case 'two-tone-third':
      return 2 * a - b;
    case 'three-tone-third':
      return a + b - c;
    case 'two-tone-fifth':
      return 3 * a - 2 * b;
  }
};

/** The product behind a packed hit. */
export const productKhzOf = (hit: PackedHit, carriers: readonly Carrier[]): number =>
  productOf(
    FAMILIES[familyOf(hit)]!,
    sourcesOf(hit).map((place) => carriers[place]!.khz),
  );

/** Unpacks a hit: ids instead of indexes, and the product recomputed. */
export function unpackHit(hit: PackedHit, carriers: readonly Carrier[]): Hit {
  const victim = carriers[victimOf(hit)]!;
  const productKhz = productKhzOf(hit, carriers);
  return {
    family: FAMILIES[familyOf(hit)]!,
    sourceIds: sourcesOf(hit).map((place) => carriers[place]!.id),
    productKhz,
    victimId: victim.id,
    distanceKhz: Math.abs(productKhz - victim.khz),
  };
}
