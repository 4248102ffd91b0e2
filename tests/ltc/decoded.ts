import { ltcDecoder } from '../../src/ltc/decoder.ts';
import type { LtcFrame } from '../../src/ltc/frames/frame.ts';
import type { Sound } from './read-wave.ts';

/** Everything that a decoder gives, pushed in blocks as an audio worklet does. */
export function decoded({ samples, sampleRate }: Sound, block = 128): LtcFrame[] {
  const decoder = ltcDecoder(sampleRate);
  const frames: LtcFrame[] = [];
  for (let at = 0; at < samples.length; at += block)
    frames.push(...decoder.push(samples.subarray(at, at + block)));
  return frames;
}

const two = (value: number): string => String(value).padStart(2, '0');

/** The digits of a frame as they stand, `10:11:12:13`. */
export const digitsOf = ({ label }: LtcFrame): string =>
  [label.hours, label.minutes, label.seconds, label.frames].map(two).join(':');
