/**
 * Takes the band of a code out of sound, without delay that differs by frequency: a mean over a long window is
 * taken away twice (constant level, hum), and a mean over a short one smooths noise. Means over windows of odd
 * length are symmetric, so edges stay where they are.
 */
export interface BandPass {
  /** Filters `count` samples from a place on into `out`. Views would be made a thousand times a second. */
  filter(samples: Float32Array, from: number, count: number, out: Float64Array): void;
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

function windowOf(length: number): Window {
  const size = 2 ** Math.ceil(Math.log2(length + 1));
  return { kept: new Float64Array(size), mask: size - 1, length, half: (length - 1) / 2 };
}

const odd = (length: number): number => 2 * Math.round((length - 1) / 2) + 1;

export function bandPass(samplesABit: number): BandPass {
  const long = odd(samplesABit * LONG_BITS);
  const short = odd(Math.max(1, samplesABit * SHORT_BITS));
  const first = windowOf(long);
  const second = windowOf(long);
  const smooth = (short - 1) / 2;
  const raw = first.kept;
  const level = second.kept;
  const { mask, half } = first;
  const [ofLong, ofShort] = [1 / long, 1 / short];
  const kept = { firstSum: 0, secondSum: 0, shortSum: 0 };
  let at = 0;
  return {
    delay: first.half + second.half,
    filter(samples, from, count, out) {
      // In variables of this call: what a closure keeps is a new object each time a fraction is put into it.
      let { firstSum, secondSum, shortSum } = kept;
      for (let i = 0; i < count; i += 1) {
        const n = at + i;
        const heard = samples[from + i]!;
        // One value that is no number would stay in the means for ever.
        const sample = heard > -LOUDEST && heard < LOUDEST ? heard : 0;
        firstSum += sample - raw[(n - long) & mask]!;
        raw[n & mask] = sample;
        const flat = raw[(n - half) & mask]! - firstSum * ofLong;
        secondSum += flat - level[(n - long) & mask]!;
        // The short window is around the middle of the long one, half of it back.
        shortSum += level[(n - half + smooth) & mask]! - level[(n - half - smooth - 1) & mask]!;
        level[n & mask] = flat;
        out[i] = shortSum * ofShort - secondSum * ofLong;
      }
      kept.firstSum = firstSum;
      kept.secondSum = secondSum;
      kept.shortSum = shortSum;
      at += count;
    },
  };
}

/** Long enough that a bit hardly moves its own mean, short enough to follow a hum: 3 ms at 25 frames. */
const LONG_BITS = 6.5;
/** Half of half a bit: noise falls and no bit is lost. */
const SHORT_BITS = 0.25;
const LOUDEST = 16;
