/** Numbers that look random and are the same for one seed everywhere. */
export interface Dice {
  /** From 0 up to 1. */
  next(): number;
  /** A whole number from 0 up to `count` - 1. */
  below(count: number): number;
  pick<T>(from: readonly T[]): T;
}

/** Dice for a seed, any whole number: a 32-bit counter stirred by shifts and products (constants from memory). */
export function diceOf(seed: number): Dice {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x9e37_79b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0_aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a_2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
  const below = (count: number): number => Math.floor(next() * count);
  return { next, below, pick: (from) => from[below(from.length)]! };
}
