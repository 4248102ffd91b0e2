import type { LtcFrame } from '../frames/frame.ts';
import { bandPass } from './band-pass.ts';
import { bitReader } from './bit-reader.ts';
import { edgeFinder } from './edges.ts';
import { frameFinder } from './frame-finder.ts';
import { neighbours } from './neighbours.ts';

/** Bits of a fifth longer to a quarter shorter than the middle of the range are read. */
export interface SpeedRange {
  /** Samples from a position in the whole of what was heard, pushed in order. */
  push(block: Float32Array): void;
  /** Sync words seen so far, whether or not they made a frame. */
  readonly seen: () => number;
}

const BLOCK = 1024;

/** Reads code whose bits last about `samplesABit`; frames come as soon as their neighbours agree. */
export function speedRange(samplesABit: number, from: number, give: (frame: LtcFrame) => void): SpeedRange {
  const filter = bandPass(samplesABit);
  const confirm = neighbours(give);
  let seen = 0;
  const frames = frameFinder((frame) => {
    seen += 1;
    confirm(frame);
  });
  const bits = bitReader(samplesABit, frames.bit, frames.broken);
  const find = edgeFinder(samplesABit, (position, peak) => {
    frames.peak(peak);
    bits.edge(position);
  });
  const waves = new Float64Array(BLOCK);
  let at = from - filter.delay;
  return {
    push(samples) {
      for (let i = 0; i < samples.length; i += BLOCK) {
        const count = Math.min(BLOCK, samples.length - i);
        filter.filter(samples, i, count, waves);
        find(waves, count, at);
        at += count;
      }
    },
    seen: () => seen,
  };
}
