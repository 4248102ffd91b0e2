/** A bit is over: its value, the edge that ended it, and how long it was. */
export type OnBit = (bit: 0 | 1, end: number, length: number) => void;

export interface BitReader {
  edge(position: number): void;
}

/** A whole bit is longer than this part of one, and half a bit shorter. */
const DIVIDE = 0.75;
const SHORTEST = 0.27;
const LONGEST = 1.4;
/** How much one bit moves the clock: quickly at first, then slowly, so that noise does not. */
const QUICK = 1 / 4;
const SLOW = 1 / 16;
const SETTLED_BITS = 16;

/**
 * Bi-phase mark by intervals: a whole bit without an edge is a 0, two halves are a 1. Its clock follows the code,
 * and starts anew from `samplesABit` whenever something does not fit; `onBreak` tells that.
 */
export function bitReader(samplesABit: number, onBit: OnBit, onBreak: () => void): BitReader {
  const now = { bit: samplesABit, last: 0, half: 0, run: 0 };
  const broken = (): void => {
    if (now.run > 0) onBreak();
    now.bit = samplesABit;
    now.half = 0;
    now.run = 0;
  };
  const done = (value: 0 | 1, length: number, end: number): void => {
    now.bit += (length - now.bit) * (now.run < SETTLED_BITS ? QUICK : SLOW);
    now.half = 0;
    now.run += 1;
    onBit(value, end, length);
  };
  return {
    edge(position) {
      const length = position - now.last;
      now.last = position;
      if (length < now.bit * SHORTEST || length > now.bit * LONGEST) return broken();
      if (length > now.bit * DIVIDE) {
        // Half a bit was left over: the pairs began in the middle.
        if (now.half > 0) broken();
        return done(0, length, position);
      }
      if (now.half === 0) now.half = length;
      else done(1, now.half + length, position);
    },
  };
}
