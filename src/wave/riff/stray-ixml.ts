import { viewOf } from './byte-view.ts';
import type { HeaderReader } from './header-reader.ts';
import { CHUNK_HEADER, type Chunk } from './riff.ts';

/** iXML is usually last, so this much of the tail is searched when the chunk walk fails. */
const TAIL = 32 * 1024;
const ID = [0x69, 0x58, 0x4d, 0x4c] as const;

/**
 * Looks for an iXML chunk in the last 32 KiB after `from`, in files with broken chunk sizes. Undefined if
 * none fits into the rest of the file.
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
