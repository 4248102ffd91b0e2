import type { Label } from '../../time/label.ts';
import { type FrameBits, labelOf } from '../frames/frame.ts';

/** Eighty bits with a sync word and digits in range; whether they are true, the frames beside them tell. */
export interface FoundFrame extends FrameBits {
  readonly label: Label;
  readonly reversed: boolean;
  readonly start: number;
  readonly end: number;
  readonly jitter: number;
  readonly peak: number;
}

export interface FrameFinder {
  bit(bit: 0 | 1, end: number, length: number): void;
  broken(): void;
  peak(value: number): void;
}

const FRAME_BITS = 80;
/** Bits and edges are kept in a ring of a power of two, so that places in it are had without dividing. */
const RING = 128;
const MASK = RING - 1;
/** The sync word in the order heard, the first bit highest: forwards, and from a tape that runs backwards. */
const SYNC = 0b0011_1111_1111_1101;
const SYNC_REVERSED = 0b1011_1111_1111_1100;
/** Edges that stray further, as a part of a bit, are noise. */
const MOST_JITTER = 0.16;
/** The sum of the squares of -40 to 40. */
const SQUARES = 44_280;

/**
 * Cuts bits into frames at the sync word. Where a frame begins and ends is a line laid through all of its edges,
 * so one that noise has moved hardly counts.
 */
export function frameFinder(onFrame: (frame: FoundFrame) => void): FrameFinder {
  const bits = new Uint8Array(RING);
  const ends = new Float64Array(RING);
  let [count, recent, level] = [0, 0, 0];

  /** 32 bits from a place in the frame, the first lowest; backwards from the last bit heard if the tape runs so. */
  const word = (from: number, reversed: boolean): number => {
    let value = 0;
    for (let i = from + 31; i >= from; i -= 1) {
      const place = reversed ? count - 1 - i : count - FRAME_BITS + i;
      value = (value << 1) | bits[place & MASK]!;
    }
    return value >>> 0;
  };
  const startsReversed = (): boolean => {
    let value = 0;
    for (let i = count - FRAME_BITS; i < count - 64; i += 1) value = (value << 1) | bits[i & MASK]!;
    return value === SYNC_REVERSED;
  };

  const give = (reversed: boolean): void => {
    const read = { low: word(0, reversed), high: word(32, reversed) };
    const label = labelOf(read);
    if (!label) return;
    const line = lineThrough(ends, count);
    if (line.jitter > MOST_JITTER) return;
    onFrame({ ...read, ...line, label, reversed, peak: level });
  };

  return {
    bit(bit, end, length) {
      if (count === 0) ends[0] = end - length;
      bits[count & MASK] = bit;
      count += 1;
      ends[count & MASK] = end;
      recent = ((recent << 1) | bit) & 0xffff;
      if (count < FRAME_BITS) return;
      if (recent === SYNC) give(false);
      else if (startsReversed()) give(true);
    },
    broken() {
      [count, recent] = [0, 0];
    },
    peak(value) {
      level += (value - level) / 32;
    },
  };
}

/** Through the 81 edges up to the `count`th: where the first and the last should be, and how far all stray. */
function lineThrough(ends: Float64Array, count: number) {
  const first = count - FRAME_BITS;
  const zero = ends[first & MASK]!;
  let [sum, weighed] = [0, 0];
  for (let i = 0; i <= FRAME_BITS; i += 1) {
    const edge = ends[(first + i) & MASK]! - zero;
    sum += edge;
    weighed += edge * (i - 40);
  }
  const bit = weighed / SQUARES;
  const middle = zero + sum / (FRAME_BITS + 1);
  let squares = 0;
  for (let i = 0; i <= FRAME_BITS; i += 1) {
    const off = ends[(first + i) & MASK]! - middle - bit * (i - 40);
    squares += off * off;
  }
  return {
    start: middle - 40 * bit,
    end: middle + 40 * bit,
    jitter: Math.sqrt(squares / (FRAME_BITS + 1)) / bit,
  };
}
