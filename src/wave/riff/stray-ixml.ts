import { viewOf } from './byte-view.ts';
import type { HeaderReader } from './header-reader.ts';
import { CHUNK_HEADER, type Chunk } from './riff.ts';

/** iXML usually stands last, so this much of the tail is searched when the way to it is lost. */
const TAIL = 32 * 1024;
const ID = [0x69, 0x58, 0x4d, 0x4c] as const;

/**
 * Looks for an iXML chunk in the last 32 KiB behind `from`, for files whose chunk sizes lead nowhere. Undefined where
 * none fits into what is left of the file.
 */
export async function findStrayIXml(reader: HeaderReader, from: number): Promise<Chunk | undefined> {
  const tailStart = Math.max(from, reader.size - TAIL);
  const bytes = await reader.bytes(tailStart, reader.size);
  if (!bytes.ok) return undefined;
  const tail = bytes.value;
  for (let at = tail.indexOf(ID[0]); at >= 0; at = tail.indexOf(ID[0], at + 1)) {
    if (at + CHUNK_HEADER.len > tail.byteLength) return undefined;
    if (!ID.every((byte, index) => tail[at + index] === byte)) continue;
    const { size } = CHUNK_HEADER.get(viewOf(tail), at);
    const start = at + CHUNK_HEADER.len;
    if (size > 0 && start + size <= tail.byteLength)
      return { id: 'iXML', at: tailStart + at, start: tailStart + start, size, declared: size };
  }
  return undefined;
}
