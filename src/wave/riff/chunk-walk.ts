import { ok, type Result } from '../../shared/result.ts';
import type { Warn } from '../warning.ts';
import { viewOf } from './byte-view.ts';
import { DS64_MOST_BYTES, type Ds64, readDs64 } from './ds64.ts';
import type { HeaderReader, ReadProblem } from './header-reader.ts';
import {
  CHUNK_HEADER,
  type Chunk,
  type ChunkHeader,
  isChunkId,
  isKnownChunkId,
  printable,
  type WaveContainer,
} from './riff.ts';
import { findStrayIXml } from './stray-ixml.ts';

export interface ChunkMap {
  readonly chunks: readonly Chunk[];
  readonly ds64: Ds64 | undefined;
}

/** A wave file has a dozen chunks; a longer chain is damaged or malicious. */
const MAX_CHUNKS = 256;
/** "The real size is in ds64", or in a plain RIFF "not known yet" (EBU Tech 3306, section 3). */
const SIZE_ELSEWHERE = 0xffff_ffff;
const FIRST_CHUNK = 12;
const TWO_32 = 2 ** 32;

/** Walks the chunk headers and skips every payload; damage becomes a warning. */
export async function walkChunks(
  reader: HeaderReader,
  container: WaveContainer,
  warn: Warn,
): Promise<Result<ChunkMap, ReadProblem>> {
  const walk = new ChunkWalk(reader, warn);
  const stopped = await walk.run();
  if (stopped?.code === 'file-unreadable') return { ok: false, problem: stopped };
  if (stopped) warn({ code: stopped.code, at: stopped.at });
  await walk.lookForIXml();
  if (container !== 'RIFF' && walk.chunks[0]?.id !== 'ds64') warn({ code: 'ds64-missing', at: FIRST_CHUNK });
  return ok({ chunks: walk.chunks, ds64: walk.ds64 });
}

class ChunkWalk {
  readonly chunks: Chunk[] = [];
  ds64: Ds64 | undefined;
  readonly #reader: HeaderReader;
  readonly #warn: Warn;
  readonly #sizesUsed = new Map<string, number>();
  #lostAt: number | undefined;

  constructor(reader: HeaderReader, warn: Warn) {
    this.#reader = reader;
    this.#warn = warn;
  }

  /** Ends at the last chunk, or earlier with what stopped it. */
  async run(): Promise<ReadProblem | undefined> {
    let at = FIRST_CHUNK;
    while (at + CHUNK_HEADER.len <= this.#reader.size) {
      if (this.chunks.length === MAX_CHUNKS) {
        this.#warn({ code: 'chunks-too-many', at, most: MAX_CHUNKS });
        return undefined;
      }
      const found = await this.#headerNear(at);
      if (!found.ok) return found.problem;
      if (!found.value) return undefined;
      const chunk = await this.#measure(found.value.header, found.value.at);
      if (!chunk.ok) return chunk.problem;
      this.chunks.push(chunk.value);
      if (chunk.value.id === 'ds64' && !this.ds64) {
        const problem = await this.#readDs64(chunk.value);
        if (problem) return problem;
      }
      // An odd payload is followed by a pad byte that its size does not count.
      at = chunk.value.start + chunk.value.size + (chunk.value.size % 2);
    }
    return undefined;
  }

  /** If the walk was lost before an iXML chunk, the tail of the file may still hold one. */
  async lookForIXml(): Promise<void> {
    if (this.#lostAt === undefined || this.chunks.some(({ id }) => id === 'iXML')) return;
    const stray = await findStrayIXml(this.#reader, this.#lostAt);
    if (!stray) return;
    this.chunks.push(stray);
    this.#warn({ code: 'ixml-astray', at: stray.at });
  }

  async #header(at: number): Promise<Result<ChunkHeader, ReadProblem>> {
    const bytes = await this.#reader.bytes(at, at + CHUNK_HEADER.len);
    return bytes.ok ? ok(CHUNK_HEADER.get(viewOf(bytes.value), 0)) : bytes;
  }

  /** The header at its even position, or one byte earlier without the pad byte; undefined if none. */
  async #headerNear(
    at: number,
  ): Promise<Result<{ header: ChunkHeader; at: number } | undefined, ReadProblem>> {
    const header = await this.#header(at);
    if (!header.ok) return header;
    if (isKnownChunkId(header.value.id)) return ok({ header: header.value, at });
    const last = this.chunks.at(-1);
    if (last && last.size % 2 === 1) {
      const earlier = await this.#header(at - 1);
      if (!earlier.ok) return earlier;
      if (isKnownChunkId(earlier.value.id)) {
        this.#warn({ code: 'pad-byte-missing', at: at - 1, after: last.id });
        return ok({ header: earlier.value, at: at - 1 });
      }
    }
    if (isChunkId(header.value.id)) return ok({ header: header.value, at });
    this.#lostAt = at;
    this.#warn({ code: 'chunk-id-unreadable', at, found: printable(header.value.id) });
    return ok(undefined);
  }

  async #measure(header: ChunkHeader, at: number): Promise<Result<Chunk, ReadProblem>> {
    const start = at + CHUNK_HEADER.len;
    const declared = this.#declaredSize(header);
    const size = header.id === 'data' ? await this.#dataSize(declared, start) : ok(declared);
    if (!size.ok) return size;
    const room = this.#reader.size - start;
    if (size.value > room) {
      const open = size.value >= SIZE_ELSEWHERE && header.id === 'data' && !this.ds64;
      const code = open ? 'data-not-closed' : 'chunk-past-end';
      this.#warn({ code, at: at + 4, id: printable(header.id), declared: size.value, held: room });
    }
    const id = printable(header.id);
    return ok({ id, at, start, size: Math.min(size.value, room), declared });
  }

  #declaredSize({ id, size }: ChunkHeader): number {
    if (size !== SIZE_ELSEWHERE || !this.ds64) return size;
    if (id === 'data') return this.ds64.dataSize;
    const nth = this.#sizesUsed.get(id) ?? 0;
    this.#sizesUsed.set(id, nth + 1);
    return this.ds64.others.get(id)?.[nth] ?? size;
  }

  /** A recording that was never closed says 0; one that outgrew 32 bits says the remainder. */
  async #dataSize(declared: number, start: number): Promise<Result<number, ReadProblem>> {
    const room = this.#reader.size - start;
    if (declared >= room) return ok(declared);
    const follows = await this.#chunkFollows(start + declared);
    if (!follows.ok || follows.value) return follows.ok ? ok(declared) : follows;
    if (declared === 0) {
      this.#warn({ code: 'data-not-closed', at: start - 4, id: 'data', declared, held: room });
      return ok(room);
    }
    for (let size = declared + TWO_32; size <= room; size += TWO_32) {
      const found = await this.#chunkFollows(start + size);
      if (!found.ok) return found;
      if (!found.value) continue;
      this.#warn({ code: 'data-size-wrapped', at: start - 4, declared, held: size });
      return ok(size);
    }
    return ok(declared);
  }

  async #chunkFollows(end: number): Promise<Result<boolean, ReadProblem>> {
    const even = end + (end % 2);
    if (even + CHUNK_HEADER.len > this.#reader.size) return ok(true);
    for (const at of even === end ? [even] : [even, end]) {
      const header = await this.#header(at);
      if (!header.ok) return header;
      const { id, size } = header.value;
      if (isKnownChunkId(id)) return ok(true);
      if (isChunkId(id) && at + CHUNK_HEADER.len + size <= this.#reader.size) return ok(true);
    }
    return ok(false);
  }

  async #readDs64(chunk: Chunk): Promise<ReadProblem | undefined> {
    const bytes = await this.#reader.bytes(chunk.start, chunk.start + Math.min(chunk.size, DS64_MOST_BYTES));
    if (!bytes.ok) return bytes.problem;
    this.ds64 = readDs64(bytes.value);
    if (!this.ds64) this.#warn({ code: 'ds64-short', at: chunk.at, size: chunk.size });
    return undefined;
  }
}
