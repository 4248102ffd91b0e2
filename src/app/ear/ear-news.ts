import type { LtcFrame } from '../../ltc/frames/frame.ts';

/** What the listening thread posts, ten times a second: frames, never sound. */
export interface EarNews {
  /** Samples heard so far; the positions of frames count from the same sample. */
  readonly at: number;
  readonly frames: readonly LtcFrame[];
  /** The loudest sample since the last news. */
  readonly peak: number;
  readonly good: number;
  readonly bad: number;
}

export const EAR_PROCESSOR = 'ear';
