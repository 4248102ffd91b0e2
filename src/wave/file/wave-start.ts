import { framesPerDay, type RateId } from '../../time/rate.ts';
import { samplesToFrames } from '../../time/samples.ts';
import { addFrames, formatTimecode } from '../../time/timecode.ts';

/** Where a file starts: samples since midnight and the matching label. */
export interface WaveStart {
  readonly samples: number;
  /** The rate of the sample count: TIMESTAMP_SAMPLE_RATE if iXML has one. */
  readonly sampleRate: number;
  readonly source: 'bext' | 'ixml';
  /** Undefined if neither iXML nor the description gives a timecode rate. */
  readonly label: TimecodeLabel | undefined;
}

export interface TimecodeLabel {
  readonly rate: RateId;
  /** Frames since 00:00:00:00, within one day of labels. */
  readonly frames: number;
  /** Samples past the frame's first one; -1 for a count one sample early. */
  readonly remainder: number;
  readonly timecode: string;
  /** The count exceeded a day of labels and was wrapped. */
  readonly wrapped: boolean;
}

/**
 * The label of a count of samples since midnight, at the exact rate, wrapped at a day of labels rather than
 * of the clock. 1729728000 samples at 48000 and 23.976 are 10:00:00:00.
 */
export function labelAtSample(samples: number, sampleRate: number, rate: RateId): TimecodeLabel {
  const { frames, remainder } = samplesToFrames(samples, sampleRate, rate);
  return {
    rate,
    frames: addFrames(frames, 0, rate),
    remainder,
    timecode: formatTimecode(frames, rate),
    wrapped: frames >= framesPerDay(rate),
  };
}

/** The same start labelled at a rate the file does not give, such as the day's. */
export const startAtRate = (start: WaveStart, rate: RateId): WaveStart => ({
  ...start,
  label: labelAtSample(start.samples, start.sampleRate, rate),
});
