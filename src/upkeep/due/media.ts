import { fail, ok, type Result } from '../../shared/result.ts';
import { firstBadQuantity, type Quantity } from '../quantity.ts';

/** GB is 10⁹ bytes, GiB is 2³⁰: 7.4 % apart, so a figure always says which. */
export const SIZE_UNITS = { GB: 1e9, GiB: 2 ** 30 } as const;
export type SizeUnit = keyof typeof SIZE_UNITS;

/** RIFF/WAVE file sizes are 32 bits, so recorders split or change container before 4 GiB; some at 2 GiB. */
export const FILE_LIMITS = { '4 GiB': 2 ** 32, '2 GiB': 2 ** 31 } as const;

/** Headers and metadata beside the samples: allow 1 %. */
export const OVERHEAD = 1.01;

/** What is recorded: how many tracks, the sample rate, and bits per sample (32 is float). */
export interface RecordingFormat {
  readonly tracks: number;
  readonly sampleRate: number;
  readonly bits: 16 | 24 | 32;
}

const formatQuantities = (format: RecordingFormat): readonly Quantity[] => [
  { field: 'tracks', value: format.tracks, min: 1, max: 512, whole: true },
  { field: 'sampleRate', value: format.sampleRate, min: 8000, max: 768_000 },
  { field: 'bits', value: format.bits, min: 16, max: 32 },
];

const bytesField = (field: string, value: number): Quantity => ({ field, value, min: 0, max: 1e18 });

/** Bytes per second of sound. Example: 8 tracks, 48 kHz, 24 bit is 1,152,000. */
export function bytesPerSecond(format: RecordingFormat): Result<number> {
  const problem = firstBadQuantity(formatQuantities(format));
  return problem ? fail(problem) : ok((format.tracks * format.sampleRate * format.bits) / 8);
}

/** Hours of sound that fit in so many bytes, without headers. Example: 8 tracks, 24/48 in 64 GB is 15.43. */
export function hoursIn(bytes: number, format: RecordingFormat): Result<number> {
  const problem = firstBadQuantity([bytesField('bytes', bytes)]);
  if (problem) return fail(problem);
  const rate = bytesPerSecond(format);
  return rate.ok ? ok(bytes / rate.value / 3600) : rate;
}

/**
 * Minutes until one file reaches a size limit, with `headerBytes` subtracted first. Example: 8 tracks, 48
 * kHz, 24 bit reach 4 GiB in 62.14 min and 2 GiB in 31.07.
 */
export function minutesToFileLimit(
  format: RecordingFormat,
  limit: keyof typeof FILE_LIMITS = '4 GiB',
  headerBytes = 0,
): Result<number> {
  const limitBytes = FILE_LIMITS[limit];
  const problem = firstBadQuantity([{ field: 'headerBytes', value: headerBytes, min: 0, max: limitBytes }]);
  if (problem) return fail(problem);
  const hours = hoursIn(limitBytes - headerBytes, format);
  return hours.ok ? ok(hours.value * 60) : hours;
}
