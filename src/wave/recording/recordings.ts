import type { RateId } from '../../time/rate.ts';
import type { WaveDescription } from '../file/describe-wave.ts';
import type { WaveStart } from '../file/wave-start.ts';
import { chainFileSets } from './recording-chains.ts';
import type { RecordingPart } from './recording-part.ts';
import { compareText, type FileSet, groupFileSets } from './recording-sets.ts';

export interface RecordingTrack {
  readonly channel: number | undefined;
  readonly name: string | undefined;
  readonly function: string | undefined;
  readonly file: string;
  readonly interleave: number;
}

export type RecordingWarning =
  | { readonly code: 'set-incomplete'; readonly expected: number; readonly found: number }
  | { readonly code: 'set-lengths-differ'; readonly lengths: readonly number[] }
  | { readonly code: 'set-values-differ'; readonly field: string; readonly values: readonly string[] }
  | { readonly code: 'parts-do-not-meet'; readonly after: string; readonly samples: number }
  | { readonly code: 'file-twice'; readonly names: readonly string[] };

/** What the recorder made between two presses of its button, however many files it took. */
export interface Recording {
  /** In order of time; more than one if the recorder split it. */
  readonly parts: readonly RecordingPart[];
  readonly files: readonly WaveDescription[];
  /** Files with the same content again. */
  readonly copies: readonly WaveDescription[];
  readonly tracks: readonly RecordingTrack[];
  readonly start: WaveStart | undefined;
  /** Samples per channel, all parts together. */
  readonly length: number;
  readonly sampleRate: number | undefined;
  readonly bits: number | undefined;
  readonly rate: RateId | undefined;
  readonly project: string | undefined;
  readonly tape: string | undefined;
  readonly scene: string | undefined;
  readonly take: string | undefined;
  readonly note: string | undefined;
  readonly circled: boolean | undefined;
  readonly takeTypes: readonly string[];
  readonly warnings: readonly RecordingWarning[];
}

/**
 * Joins the files of a card into recordings: mono sets and split files become one each. Every file ends up in
 * exactly one recording, as a file or as a copy. Ordered by tape, start and name, whatever the order of the
 * input.
 */
export const joinRecordings = (files: readonly WaveDescription[]): Recording[] =>
  chainFileSets(groupFileSets(files)).map(recordingOf).sort(byTapeAndStart);

function recordingOf({ parts, copies }: FileSet): Recording {
  const files = parts.flatMap((part) => part.files);
  const warnings: RecordingWarning[] = [...setWarnings(parts, files, copies), ...gapsBetween(parts)];
  const agreed = <T extends string | number>(
    field: string,
    read: (file: WaveDescription) => T | undefined,
  ) => {
    const values = [...new Set(files.map(read).filter((value) => value !== undefined))];
    if (values.length > 1) warnings.push({ code: 'set-values-differ', field, values: values.map(String) });
    return values[0];
  };
  const start = files[0]?.resolved.start;
  const length = parts.reduce((sum, part) => sum + part.length, 0);
  return {
    parts,
    files,
    copies,
    tracks: tracksOf(parts[0]!),
    start,
    length,
    sampleRate: agreed('sampleRate', ({ resolved }) => resolved.sampleRate),
    bits: agreed('bits', ({ resolved }) => resolved.bits),
    rate: agreed('rate', ({ resolved }) => resolved.rate),
    project: agreed('project', ({ resolved }) => resolved.project),
    tape: agreed('tape', ({ resolved }) => resolved.tape),
    scene: agreed('scene', ({ resolved }) => resolved.scene),
    take: agreed('take', ({ resolved }) => resolved.take),
    note: agreed('note', ({ resolved }) => resolved.note),
    circled: circledOf(files),
    takeTypes: [...new Set(files.flatMap(({ resolved }) => resolved.takeTypes))],
    warnings,
  };
}

function tracksOf(part: RecordingPart): RecordingTrack[] {
  return part.files.flatMap(({ name: file, resolved }) =>
    resolved.tracks.map(({ channel, name, function: role, interleave }) => ({
      channel,
      name,
      function: role,
      file,
      interleave,
    })),
  );
}

/** Circled if any file says so, not circled if any says that, else unknown. */
function circledOf(files: readonly WaveDescription[]): boolean | undefined {
  const said = files.map(({ resolved }) => resolved.circled).filter((value) => value !== undefined);
  return said.length === 0 ? undefined : said.includes(true);
}

function setWarnings(
  parts: readonly RecordingPart[],
  files: readonly WaveDescription[],
  copies: readonly WaveDescription[],
): RecordingWarning[] {
  const warnings: RecordingWarning[] = [];
  const expected = Math.max(0, ...files.map(({ ixml }) => ixml?.fileSet?.totalFiles ?? 0));
  if (expected > files.length) warnings.push({ code: 'set-incomplete', expected, found: files.length });
  for (const part of parts) {
    const lengths = [...new Set(part.files.map(({ resolved }) => resolved.length ?? 0))];
    if (lengths.length > 1) warnings.push({ code: 'set-lengths-differ', lengths });
  }
  if (copies.length > 0) warnings.push({ code: 'file-twice', names: copies.map(({ name }) => name) });
  return warnings;
}

/** Positive samples are a gap, negative ones an overlap; a wrap at midnight is neither. */
function gapsBetween(parts: readonly RecordingPart[]): RecordingWarning[] {
  return parts.slice(1).flatMap((part, index) => {
    const last = parts[index]!;
    if (part.start === undefined || last.start === undefined || part.start < last.start) return [];
    const samples = part.start - (last.start + last.length);
    const after = last.files[0]!.name;
    return Math.abs(samples) <= 1 ? [] : [{ code: 'parts-do-not-meet' as const, after, samples }];
  });
}

function byTapeAndStart(a: Recording, b: Recording): number {
  return (
    compareText(a.tape ?? '', b.tape ?? '') ||
    (a.start?.samples ?? -1) - (b.start?.samples ?? -1) ||
    compareText(a.files[0]!.name, b.files[0]!.name)
  );
}
