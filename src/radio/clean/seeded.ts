/**
 * Whole numbers from 0 up to but not including `below`, the same sequence for the same seed (mulberry32,
 * public domain). No real randomness: the same input always gives the same plan.
 */
export function seededBelow(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below);
  };
}
