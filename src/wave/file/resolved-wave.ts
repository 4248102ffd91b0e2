import type { RateId } from '../../time/rate.ts';
import type { Warn } from '../warning.ts';
import type { WaveParts } from './wave-parts.ts';
import { labelAtSample, type WaveStart } from './wave-start.ts';
import { resolveTracks, type WaveTrack } from './wave-tracks.ts';

/** What one file says about itself; if two places disagree, the stronger one, with a warning. */
export interface ResolvedWave {
  readonly project: string | undefined;
  readonly scene: string | undefined;
  readonly take: string | undefined;
  readonly tape: string | undefined;
  readonly note: string | undefined;
  /** Undefined if the file has no field for it. */
  readonly circled: boolean | undefined;
  readonly takeTypes: readonly string[];
  readonly rate: RateId | undefined;
  readonly sampleRate: number | undefined;
  readonly bits: number | undefined;
  readonly channels: number | undefined;
  readonly start: WaveStart | undefined;
  /** Samples per channel. */
  readonly length: number | undefined;
  readonly tracks: readonly WaveTrack[];
}

/**
 * Precedence: iXML over description lines for texts (iXML 3.01, usage); the official fmt and bext values over
 * their copies in iXML, because tools may update one and not the other.
 */
export function resolveWave(parts: WaveParts, warn: Warn): ResolvedWave {
  const { format, ixml, lines } = parts;
  const text = (field: 'scene' | 'take' | 'tape' | 'note' | 'project'): string | undefined =>
    stronger(field, ixml?.[field], lines?.[field], parts, warn);
  const speed = ixml?.speed;
  const rate = stronger('rate', speed?.rate, lines?.rate, parts, warn);
  return {
    project: text('project'),
    scene: text('scene'),
    take: text('take'),
    tape: text('tape'),
    note: text('note'),
    circled: ixml?.circled ?? lines?.circled,
    takeTypes: ixml?.takeTypes ?? [],
    rate,
    sampleRate: officialNumber('sampleRate', format?.sampleRate, speed?.fileSampleRate, parts, warn),
    bits: officialNumber('bits', format?.validBits, speed?.audioBitDepth, parts, warn),
    channels: format?.channels,
    start: resolveStart(parts, rate, warn),
    length: parts.length,
    tracks: resolveTracks(parts, warn),
  };
}

function stronger<T extends string>(
  field: string,
  kept: T | undefined,
  other: T | undefined,
  parts: WaveParts,
  warn: Warn,
): T | undefined {
  if (kept === undefined || other === undefined) return kept ?? other;
  // The 256 characters of the description may cut a long note.
  const same = kept === other || (field === 'note' && kept.startsWith(other));
  if (!same)
    warn({
      code: 'value-differs',
      at: parts.bext?.at ?? 0,
      field,
      kept,
      other,
      keptFrom: 'ixml',
      otherFrom: 'lines',
    });
  return kept;
}

function officialNumber(
  field: string,
  kept: number | undefined,
  other: number | undefined,
  parts: WaveParts,
  warn: Warn,
): number | undefined {
  if (kept !== undefined && other !== undefined && kept !== other)
    warn({
      code: 'value-differs',
      at: parts.ixml?.at ?? 0,
      field,
      kept,
      other,
      keptFrom: 'fmt',
      otherFrom: 'ixml',
    });
  return kept ?? (other || undefined);
}

function resolveStart(parts: WaveParts, rate: RateId | undefined, warn: Warn): WaveStart | undefined {
  const { bext, ixml, format } = parts;
  const speed = ixml?.speed;
  const copy = speed?.timestampSamples ?? ixml?.bext?.timeReference;
  const samples = bext?.timeReference ?? copy;
  const fileRate = format?.sampleRate ?? (speed?.fileSampleRate || undefined);
  const sampleRate = speed?.timestampSampleRate ?? fileRate;
  const at = ixml?.at ?? 0;
  if (bext?.timeReference !== undefined && speed?.timestampSamples !== undefined && samples !== copy)
    warn({ code: 'timestamp-differs', at, kept: samples, other: copy });
  if (speed?.timestampSampleRate && fileRate && speed.timestampSampleRate !== fileRate)
    warn({ code: 'timestamp-rate-differs', at, timestamp: speed.timestampSampleRate, file: fileRate });
  if (speed?.digitizerSampleRate && fileRate && speed.digitizerSampleRate !== fileRate)
    warn({ code: 'digitizer-rate-differs', at, digitizer: speed.digitizerSampleRate, file: fileRate });
  if (samples === undefined || sampleRate === undefined) return undefined;
  const label = rate && labelAtSample(samples, sampleRate, rate);
  if (label?.wrapped)
    warn({ code: 'start-past-midnight', at: bext?.at ?? at, samples, timecode: label.timecode });
  return { samples, sampleRate, source: bext?.timeReference === undefined ? 'ixml' : 'bext', label };
}
