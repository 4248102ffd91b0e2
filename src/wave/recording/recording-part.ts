import { framesPerDay } from '../../time/rate.ts';
import { framesToSamples } from '../../time/samples.ts';
import type { WaveDescription } from '../file/describe-wave.ts';

/** Files recorded together over one stretch of time: one multichannel file, or a set of mono ones. */
export interface RecordingPart {
  readonly files: readonly WaveDescription[];
  /** Samples since midnight of the first sample, and samples per channel of the longest file. */
  readonly start: number | undefined;
  readonly length: number;
}

/**
 * Where a part that continues this one may start: at its end, or wrapped by a day of labels or of the clock,
 * since writers do either, each within one sample. Empty without a start or length.
 */
export function possibleNextStarts(part: RecordingPart): number[] {
  if (part.start === undefined || part.length === 0) return [];
  const end = part.start + part.length;
  const ends = [end, ...daysOf(part.files[0]!).map((day) => end - day)].filter((one) => one >= 0);
  return ends.flatMap((one) => [one, one + 1, one - 1]);
}

/** Puts parts sorted by start into recording order if they run across midnight. */
export function inOrderOfRecording(parts: readonly RecordingPart[]): readonly RecordingPart[] {
  const meets = (a: RecordingPart, b: RecordingPart): boolean =>
    b.start !== undefined && possibleNextStarts(a).includes(b.start);
  if (parts.length < 2 || !meets(parts.at(-1)!, parts[0]!)) return parts;
  const first = parts.findIndex((part, index) => index > 0 && !meets(parts[index - 1]!, part));
  return first < 0 ? parts : [...parts.slice(first), ...parts.slice(0, first)];
}

function daysOf({ resolved }: WaveDescription): number[] {
  const { start, rate } = resolved;
  if (!start) return [];
  const clockDay = 86_400 * start.sampleRate;
  return rate ? [framesToSamples(framesPerDay(rate), start.sampleRate, rate).samples, clockDay] : [clockDay];
}
