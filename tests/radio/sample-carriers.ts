import type { Carrier, Guards } from '../../src/radio/carrier.ts';
import { seededBelow } from '../../src/radio/clean/seeded.ts';
import type { Analysis } from '../../src/radio/intermodulation/analysis.ts';
import { line } from './brute-force.ts';

export const NO_GUARDS: Guards = {
  carrierKhz: 0,
  twoToneThirdKhz: 0,
  threeToneThirdKhz: 0,
  twoToneFifthKhz: 0,
  tvEdgeKhz: 0,
};

/** Packs with their receiver channels, named by their place. */
export const packsAt = (khz: readonly number[]): Carrier[] =>
  khz.map((at, place) => ({
    id: `c${place}`,
    name: `Pack ${place + 1}`,
    khz: at,
    victim: true,
    transmitting: true,
  }));

/** Grid steps of 400 kHz from 480 MHz, each pack named by its step, so that a hit reads like the published tables. */
export const STEP_KHZ = 400;
export const onGrid = (steps: readonly number[]): Carrier[] =>
  packsAt(steps.map((step) => 480_000 + step * STEP_KHZ)).map((pack, place) => ({
    ...pack,
    id: String(steps[place]),
  }));

/** A seeded set on a 25 kHz raster over `spanKhz`, some of it only listening, only transmitting, or off. */
export function randomCarriers(seed: number, n: number, spanKhz: number, mixed: boolean): Carrier[] {
  const below = seededBelow(seed);
  return packsAt(Array.from({ length: n }, () => 470_000 + 25 * below(spanKhz / 25))).map((pack) => {
    const draw = mixed ? below(10) : 9;
    return {
      ...pack,
      victim: draw > 1,
      transmitting: draw !== 2 && draw !== 0,
      ...(draw === 4 ? { spacingKhz: 125 + 25 * below(20) } : {}),
    };
  });
}

export const hitLines = ({ hits }: Pick<Analysis, 'hits'>): string[] =>
  hits
    .map(({ family, sourceIds, productKhz, victimId, distanceKhz }) =>
      line(family, sourceIds, productKhz, victimId, distanceKhz),
    )
    .sort();

/** Few carriers close together, each at random only transmitting, only listening, or both: every rule of roles matters. */
export function randomRoles(seed: number, n: number, spanKhz: number): Carrier[] {
  const below = seededBelow(seed);
  return packsAt(Array.from({ length: n }, () => 470_000 + 25 * below(spanKhz / 25))).map((pack) => {
    const role = below(3);
    return { ...pack, victim: role !== 0, transmitting: role !== 1 };
  });
}
