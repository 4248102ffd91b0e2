import { fail, ok, type Problem, type Result } from '../../shared/result.ts';
import { type ChunkMap, walkChunks } from '../riff/chunk-walk.ts';
import type { ByteSource } from '../riff/header-reader.ts';
import { HeaderReader } from '../riff/header-reader.ts';
import { readRiffHeader } from '../riff/riff.ts';
import type { Warn, WaveWarning } from '../warning.ts';
import { compareBextMirror } from './bext-mirror.ts';
import { readParts } from './read-parts.ts';
import { type ResolvedWave, resolveWave } from './resolved-wave.ts';
import type { WaveParts } from './wave-parts.ts';

/** One wave file as its headers describe it. */
export interface WaveDescription extends WaveParts {
  readonly name: string;
  readonly size: number;
  /** Each value once, by precedence; the parts it was chosen from are given too. */
  readonly resolved: ResolvedWave;
  readonly warnings: readonly WaveWarning[];
  readonly bytesRead: number;
}

/**
 * Describes one file from slices of its head and tail; audio is skipped, so size does not matter. Damage is a
 * warning with the byte position. Problems, each with the file's name: 'file-empty', 'not-a-wave', and
 * 'file-unreadable' if the device fails while reading.
 */
export async function describeWave(source: ByteSource): Promise<Result<WaveDescription, Problem>> {
  const reader = new HeaderReader(source);
  const warnings: WaveWarning[] = [];
  const warn: Warn = (warning) => warnings.push(warning);
  const { name } = source;
  const head = await readRiffHeader(reader);
  if (!head.ok) return fail({ ...head.problem, name });
  const { container } = head.value;
  const map = await walkChunks(reader, container, warn);
  if (!map.ok) return fail({ ...map.problem, name });
  compareRiffSize(head.value.size, map.value, reader.size, warn);
  const parts = await readParts(reader, container, map.value, warn);
  if (!parts.ok) return fail({ ...parts.problem, name });
  const { bext, ixml } = parts.value;
  if (bext && ixml) compareBextMirror(bext, ixml, warn);
  const resolved = resolveWave(parts.value, warn);
  return ok({
    name,
    size: reader.size,
    ...parts.value,
    resolved,
    warnings,
    bytesRead: reader.bytesRead,
  });
}

/** The overall size is only compared; a pad byte at the very end may or may not be counted. */
function compareRiffSize(size32: number, map: ChunkMap, size: number, warn: Warn): void {
  const declared = (size32 === 0xffff_ffff && map.ds64 ? map.ds64.riffSize : size32) + 8;
  if (Math.abs(declared - size) > 1) warn({ code: 'riff-size-differs', at: 4, declared, held: size });
}
