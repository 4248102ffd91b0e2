import { fail, ok, type Problem, type Result } from '../../shared/result.ts';
import { FOUR_CC, type Token, viewOf } from './byte-view.ts';
import type { HeaderReader } from './header-reader.ts';

export type WaveContainer = 'RIFF' | 'RF64' | 'BW64';

interface RiffHeader {
  readonly id: string;
  readonly size: number;
  readonly form: string;
}

// RIFF/WAVE data specification 1991: 'RIFF', size of what follows, form type.
const RIFF_HEADER: Token<RiffHeader> = {
  len: 12,
  get: (view, at) => ({
    id: FOUR_CC.get(view, at),
    size: view.getUint32(at + 4, true),
    form: FOUR_CC.get(view, at + 8),
  }),
};

const CONTAINERS: readonly string[] = ['RIFF', 'RF64', 'BW64'] satisfies readonly WaveContainer[];

/** Reads the first twelve bytes. Problems: 'file-empty', 'not-a-wave' and 'file-unreadable'. */
export async function readRiffHeader(
  reader: HeaderReader,
): Promise<Result<{ container: WaveContainer; size: number }, Problem>> {
  if (reader.size === 0) return fail({ code: 'file-empty' });
  if (reader.size < RIFF_HEADER.len) return fail({ code: 'not-a-wave', found: '', size: reader.size });
  const head = await reader.bytes(0, RIFF_HEADER.len);
  if (!head.ok) return head;
  const { id, size, form } = RIFF_HEADER.get(viewOf(head.value), 0);
  if (!CONTAINERS.includes(id) || form !== 'WAVE')
    return fail({ code: 'not-a-wave', found: printable(id === 'RIFF' ? form : id), size: reader.size });
  return ok({ container: id as WaveContainer, size });
}

export interface ChunkHeader {
  readonly id: string;
  readonly size: number;
}

// RIFF/WAVE data specification 1991: id, size of the payload without the pad byte of odd ones.
export const CHUNK_HEADER: Token<ChunkHeader> = {
  len: 8,
  get: (view, at) => ({ id: FOUR_CC.get(view, at), size: view.getUint32(at + 4, true) }),
};

/** One chunk of the file; `size` is what the file holds of it, `declared` what its header claims. */
export interface Chunk {
  readonly id: string;
  /** Byte position of the chunk's header and of its payload. */
  readonly at: number;
  readonly start: number;
  readonly size: number;
  readonly declared: number;
}

/** Ids found in wave files; only used to tell a chunk from random bytes in a damaged file. */
const KNOWN_IDS: ReadonlySet<string> = new Set([
  ...['fmt ', 'data', 'bext', 'iXML', 'ds64', 'fact', 'LIST', 'JUNK', 'junk', 'PAD ', 'FLLR', 'cue '],
  ...['axml', 'chna', 'levl', 'link', 'mext', 'qlty', 'cart', 'smpl', 'inst', 'plst', 'note', 'ltxt'],
  ...['labl', 'umid', 'UMID', 'minf', 'elm1', 'regn', 'id3 ', 'ID3 ', '_PMX', 'aXML', 'Fake', 'wavl', 'slnt'],
]);

export const isKnownChunkId = (id: string): boolean => KNOWN_IDS.has(id);
export const isChunkId = (id: string): boolean => /^[ -~]{4}$/.test(id);

/** Text for a message, with unprintable characters as full stops. */
export const printable = (text: string): string => text.replaceAll(/[^ -~]/g, '.');
