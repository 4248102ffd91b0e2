import { type RateId, rateOf } from './rate.ts';
import { mulDivCeil, mulDivFloor, requireWhole } from './whole-number.ts';

function requireSampleRate(sampleRate: number): number {
  if (requireWhole(sampleRate, 'sample rate') <= 0)
    throw new RangeError('The sample rate must be above zero');
  return sampleRate;
}

/**
 * First whole sample of a frame, both counted from 00:00:00:00; `exact` is false if the frame starts between two samples.
 * `framesToSamples(107892, 48000, '29.97DF')` is { samples: 172799828, exact: false }, for 172799827.2.
 */
export function framesToSamples(
  frames: number,
  sampleRate: number,
  rate: RateId,
): { samples: number; exact: boolean } {
  const { num, den } = rateOf(rate);
  const perSecond = requireSampleRate(sampleRate) * den;
  const samples = mulDivCeil(requireWhole(frames, 'frames'), perSecond, num);
  return { samples, exact: mulDivFloor(frames, perSecond, num) === samples };
}

/**
 * The frame that a sample count since midnight falls in, not wrapped at 24 hours, and how many samples lie
 * past the frame's first whole one. Writers round differently, so a count up to one sample before a frame's
 * start counts as that frame, with remainder -1. `samplesToFrames(2190940753, 48000, '23.976')` is { frames:
 * 1094376, remainder: 1 }.
 */
export function samplesToFrames(
  samples: number,
  sampleRate: number,
  rate: RateId,
): { frames: number; remainder: number } {
  const { num, den } = rateOf(rate);
  const oneLater = requireWhole(samples, 'samples') + 1;
  const frames = mulDivFloor(oneLater, num, requireSampleRate(sampleRate) * den);
  return { frames, remainder: samples - framesToSamples(frames, sampleRate, rate).samples };
}
