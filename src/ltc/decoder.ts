import { type SpeedRange, speedRange } from './decoding/speed-range.ts';
import type { LtcFrame } from './frames/frame.ts';

/** Reads linear timecode from mono sound, pushed in blocks of any size. */
export interface LtcDecoder {
  /** The frames that have become certain, in order. */
  push(samples: Float32Array): LtcFrame[];
  /** Frames that were given, and those that were there and could not be read. */
  counts(): { readonly good: number; readonly bad: number };
}

/**
 * Seconds of a bit in the middle of each range: the usual rates first, then slower and faster, to a third and to
 * three times the speed. Each range reads from four fifths to five quarters of its middle and a little more.
 */
const BIT_S = [0.45e-3, 0.735e-3, 1.2e-3, 0.277e-3, 0.172e-3];
/** With fewer samples a bit its halves cannot be told apart. */
const LEAST_SAMPLES_A_BIT = 4;
/** A range that gives frames silences the others; after so many of its frames without one they listen again. */
const QUIET_FRAMES = 2;
const FRAME_BITS = 80;
/** Longer gaps were a pause, and no frames were lost in them. */
const LONGEST_GAP_FRAMES = 25;

/**
 * A decoder for sound at this sample rate. No frame is given that does not add up: digits in range, sync word,
 * a neighbour that touches and counts on, the same flags.
 */
export function ltcDecoder(sampleRate: number): LtcDecoder {
  const middles = BIT_S.map((seconds) => seconds * sampleRate).filter((bit) => bit >= LEAST_SAMPLES_A_BIT);
  let found: LtcFrame[] = [];
  let at = 0;
  let [good, bad] = [0, 0];
  let lead: { readonly range: number; readonly last: LtcFrame } | undefined;

  const listen = (samplesABit: number, range: number): SpeedRange =>
    speedRange(samplesABit, at, (frame) => {
      // The ranges overlap a little: the one that leads goes on.
      if (lead && frame.start < lead.last.end - (frame.end - frame.start) / 2) return;
      if (lead) bad += lostBetween(lead.last, frame);
      lead = { range, last: frame };
      good += 1;
      found.push(frame);
    });
  const ranges: (SpeedRange | undefined)[] = middles.map(listen);

  const leadsNow = (): number | undefined => {
    if (!lead) return undefined;
    const { last, range } = lead;
    return at - last.end < QUIET_FRAMES * (last.end - last.start) + middles[range]! * FRAME_BITS
      ? range
      : undefined;
  };

  return {
    push(samples) {
      found = [];
      const leading = leadsNow();
      for (let index = 0; index < ranges.length; index += 1) {
        if (leading !== undefined && index !== leading) ranges[index] = undefined;
        else ranges[index] ??= listen(middles[index]!, index);
      }
      for (const range of ranges) range?.push(samples);
      at += samples.length;
      return found;
    },
    counts: () => ({ good, bad }),
  };
}

function lostBetween(last: LtcFrame, frame: LtcFrame): number {
  const missing = Math.round((frame.start - last.end) / (last.end - last.start));
  return missing > 0 && missing <= LONGEST_GAP_FRAMES ? missing : 0;
}
