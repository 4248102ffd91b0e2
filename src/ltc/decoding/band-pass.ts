/**
 * Takes the band of a code out of sound, without delay that differs by frequency: a mean over a long window is
 * taken away twice (constant level, hum), and a mean over a short one smooths noise. Means over windows of odd
 * length are symmetric, so edges stay where they are.
 */
export interface BandPass {
  /** Filters `block` into `out`, which is as long. */
  filter(block: Float32Array, out: Float64Array): void;
  /** How many samples later a sample comes out. */
  readonly delay: number;
}

/** A mean over `length` samples, which must be odd, kept up sample by sample. */
interface Window {
  readonly kept: Float64Array;
  readonly mask: number;
  readonly length: number;
  readonly half: number;
}

function windowOf(length: number, kept = length): Window {
  const size = 2 ** Math.ceil(Math.log2(kept + 1));
  return { kept: new Float64Array(size), mask: size - 1, length, half: (length - 1) / 2 };
}

const odd = (length: number): number => 2 * Math.round((length - 1) / 2) + 1;

export function bandPass(samplesABit: number): BandPass {
  const long = odd(samplesABit * LONG_BITS);
  const short = odd(Math.max(1, samplesABit * SHORT_BITS));
  const first = windowOf(long);
  const second = windowOf(long);
  const smooth = (short - 1) / 2;
  let [at, firstSum, secondSum, shortSum] = [0, 0, 0, 0];
  return {
    delay: first.half + second.half,
    filter(block, out) {
      const { kept: raw, mask, half } = first;
      const { kept: level } = second;
      for (let i = 0; i < block.length; i += 1) {
        const heard = block[i]!;
        // One value that is no number would stay in the means for ever.
        const sample = heard > -LOUDEST && heard < LOUDEST ? heard : 0;
        firstSum += sample - raw[(at - long) & mask]!;
        raw[at & mask] = sample;
        const flat = raw[(at - half) & mask]! - firstSum / long;
        secondSum += flat - level[(at - long) & mask]!;
        // The short window is around the middle of the long one, half of it back.
        shortSum += level[(at - half + smooth) & mask]! - level[(at - half - smooth - 1) & mask]!;
        level[at & mask] = flat;
        out[i] = shortSum / short - secondSum / long;
        at += 1;
      }
    },
  };
}

/** Long enough that a bit hardly moves its own mean, short enough to follow a hum: 3 ms at 25 frames. */
const LONG_BITS = 6.5;
/** Half of half a bit: noise falls and no bit is lost. */
const SHORT_BITS = 0.25;
const LOUDEST = 16;
