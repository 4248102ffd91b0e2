import { ok, type Result } from '../../shared/result.ts';
import { BEXT_BYTES, readBext } from '../chunks/bext.ts';
import { readDescriptionLines } from '../chunks/description-lines.ts';
import { FMT_MOST_BYTES, readFmt, type WaveFormat } from '../chunks/fmt.ts';
import { IXML_MOST_BYTES, type IXml, readIXml } from '../ixml/ixml.ts';
import type { ChunkMap } from '../riff/chunk-walk.ts';
import type { HeaderReader, ReadProblem } from '../riff/header-reader.ts';
import type { Chunk, WaveContainer } from '../riff/riff.ts';
import type { Warn } from '../warning.ts';
import type { WaveData, WaveParts } from './wave-parts.ts';

/** Reads the payloads that describe a file; all but a device failure becomes a warning. */
export async function readParts(
  reader: HeaderReader,
  container: WaveContainer,
  map: ChunkMap,
  warn: Warn,
): Promise<Result<WaveParts, ReadProblem>> {
  const fmtChunk = firstChunk(map.chunks, 'fmt ', warn);
  const dataChunk = firstChunk(map.chunks, 'data', warn);
  const bextChunk = firstChunk(map.chunks, 'bext', warn);
  reportMissing(fmtChunk, dataChunk, reader.size, warn);
  const fmtBytes = await payloadOf(reader, fmtChunk, FMT_MOST_BYTES, warn);
  if (!fmtBytes.ok) return fmtBytes;
  const bextBytes = await payloadOf(reader, bextChunk, BEXT_BYTES, warn);
  if (!bextBytes.ok) return bextBytes;
  const ixml = await readBestIXml(reader, map.chunks, warn);
  if (!ixml.ok) return ixml;

  const format = fmtBytes.value && readFmt(fmtBytes.value, fmtChunk!.at, warn);
  const bext = bextBytes.value && readBext(bextBytes.value, bextChunk!.at, warn);
  const lines = bext && readDescriptionLines(bext.description);
  const data = dataChunk && dataOf(dataChunk);
  const length = data && format && countFrames(data, format, warn);
  if (container === 'RF64') compareSampleCount(map, data, length, warn);
  return ok({ container, format, bext, ixml: ixml.value, lines, data, length });
}

function firstChunk(chunks: readonly Chunk[], id: string, warn: Warn): Chunk | undefined {
  const [first, second] = chunks.filter((chunk) => chunk.id === id);
  if (second) warn({ code: 'chunk-repeated', at: second.at, id });
  return first;
}

function reportMissing(
  fmtChunk: Chunk | undefined,
  dataChunk: Chunk | undefined,
  size: number,
  warn: Warn,
): void {
  if (!fmtChunk) warn({ code: 'fmt-missing', at: size });
  if (!dataChunk) warn({ code: 'data-missing', at: size });
  if (fmtChunk && dataChunk && fmtChunk.at > dataChunk.at) warn({ code: 'chunk-order', at: fmtChunk.at });
}

/** A payload or its beginning; undefined without a chunk, or if the file ends early, which is reported. */
async function payloadOf(
  reader: HeaderReader,
  chunk: Chunk | undefined,
  most: number,
  warn: Warn,
): Promise<Result<Uint8Array | undefined, ReadProblem>> {
  if (!chunk) return ok(undefined);
  const bytes = await reader.bytes(chunk.start, chunk.start + Math.min(chunk.size, most));
  if (bytes.ok || bytes.problem.code === 'file-unreadable') return bytes;
  warn({ code: bytes.problem.code, at: bytes.problem.at });
  return ok(undefined);
}

/** Of several iXML chunks the last well-formed one, else the last that has any content. */
async function readBestIXml(
  reader: HeaderReader,
  chunks: readonly Chunk[],
  warn: Warn,
): Promise<Result<IXml | undefined, ReadProblem>> {
  const found = chunks.filter((chunk) => chunk.id === 'iXML');
  if (found[1]) warn({ code: 'chunk-repeated', at: found[1].at, id: 'iXML' });
  let best: IXml | undefined;
  let left = IXML_MOST_BYTES;
  for (const chunk of found.toReversed()) {
    if (best?.wellFormed) break;
    if (chunk.size > left) warn({ code: 'ixml-cut', at: chunk.at, size: chunk.size, most: left });
    const bytes = await payloadOf(reader, chunk, left, warn);
    if (!bytes.ok) return bytes;
    left -= Math.min(left, chunk.size);
    const ixml = bytes.value && readIXml(bytes.value, chunk.at, warn);
    if (ixml && (!best || ixml.wellFormed)) best = ixml;
  }
  return ok(best);
}

const dataOf = (chunk: Chunk): WaveData => ({
  start: chunk.start,
  bytes: chunk.size,
  declaredBytes: chunk.declared,
});

function countFrames(data: WaveData, { blockAlign }: WaveFormat, warn: Warn): number {
  if (data.bytes % blockAlign !== 0)
    warn({ code: 'data-not-whole-frames', at: data.start - 8, bytes: data.bytes, blockAlign });
  return Math.floor(data.bytes / blockAlign);
}

/** Only RF64 counts sample frames in ds64; in BW64 the field means nothing. */
function compareSampleCount(
  map: ChunkMap,
  data: WaveData | undefined,
  frames: number | undefined,
  warn: Warn,
): void {
  const counted = map.ds64?.sampleCount;
  const whole = data !== undefined && data.bytes === data.declaredBytes;
  if (counted && whole && frames !== undefined && counted !== frames)
    warn({ code: 'sample-count-differs', at: map.chunks[0]!.at, counted, frames });
}
