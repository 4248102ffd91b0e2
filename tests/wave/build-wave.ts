// Builds wave files for the tests out of chunks, in memory or as a source of any size that holds only its headers.
import type { ByteSource } from '../../src/wave/riff/header-reader.ts';

export interface BuiltChunk {
  readonly id: string;
  readonly payload: Uint8Array;
  /** Written into the header instead of the payload's length. */
  readonly size?: number;
  /** Leaves out the pad byte of an odd payload. */
  readonly unpadded?: boolean;
  /** Bytes of zeros that follow the payload without being stored: the audio of a large file. */
  readonly hole?: number;
}

export const bytesOf = (text: string): Uint8Array =>
  Uint8Array.from(text, (character) => character.charCodeAt(0));

export const fromHex = (hex: string): Uint8Array =>
  Uint8Array.from(hex.trim().split(/\s+/), (pair) => Number.parseInt(pair, 16));

export const chunk = (
  id: string,
  payload: Uint8Array | string,
  more: Partial<BuiltChunk> = {},
): BuiltChunk => ({
  id,
  payload: typeof payload === 'string' ? new TextEncoder().encode(payload) : payload,
  ...more,
});

export const u16 = (...values: number[]): Uint8Array => {
  const bytes = new Uint8Array(values.length * 2);
  values.forEach((value, index) => {
    new DataView(bytes.buffer).setUint16(index * 2, value & 0xffff, true);
  });
  return bytes;
};

export const u32 = (...values: number[]): Uint8Array => {
  const bytes = new Uint8Array(values.length * 4);
  values.forEach((value, index) => {
    new DataView(bytes.buffer).setUint32(index * 4, value, true);
  });
  return bytes;
};

/** Low word first. */
export const u64 = (value: number): Uint8Array => u32(value % 2 ** 32, Math.floor(value / 2 ** 32));

export function join(...pieces: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.byteLength, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.byteLength;
  }
  return bytes;
}

export interface FormatWanted {
  readonly channels?: number;
  readonly sampleRate?: number;
  readonly bits?: number;
  readonly tag?: number;
}

/** A plain fmt chunk of 16 bytes: 48 kHz, 24 bits, mono unless told otherwise. */
export function fmt({
  channels = 1,
  sampleRate = 48_000,
  bits = 24,
  tag = 1,
}: FormatWanted = {}): BuiltChunk {
  const align = channels * Math.ceil(bits / 8);
  return chunk('fmt ', join(u16(tag, channels), u32(sampleRate, sampleRate * align), u16(align, bits)));
}

export interface BextWanted {
  readonly description?: string | Uint8Array;
  readonly originator?: string;
  readonly originatorReference?: string;
  readonly date?: string;
  readonly time?: string;
  readonly timeReference?: number;
  readonly version?: number;
  readonly umid?: Uint8Array;
  /** Hundredths: value, range, peak, momentary, short-term. */
  readonly loudness?: readonly number[];
  readonly codingHistory?: string;
}

/** A bext payload with every field in its place (EBU Tech 3285 v2). */
export function bextPayload(wanted: BextWanted = {}): Uint8Array {
  const history = bytesOf(wanted.codingHistory ?? '');
  const payload = new Uint8Array(602 + history.byteLength);
  const put = (at: number, value: string | Uint8Array | undefined): void => {
    if (value !== undefined) payload.set(typeof value === 'string' ? bytesOf(value) : value, at);
  };
  put(0, wanted.description);
  put(256, wanted.originator);
  put(288, wanted.originatorReference);
  put(320, wanted.date);
  put(330, wanted.time);
  put(338, u64(wanted.timeReference ?? 0));
  put(346, u16(wanted.version ?? 1));
  put(348, wanted.umid);
  put(412, wanted.loudness && u16(...wanted.loudness));
  put(602, history);
  return payload;
}

export const bext = (wanted: BextWanted = {}): BuiltChunk => chunk('bext', bextPayload(wanted));

export const ixml = (inside: string): BuiltChunk =>
  chunk('iXML', `<?xml version="1.0" encoding="UTF-8"?>\n<BWFXML>${inside}</BWFXML>`);

/** Silent audio that is stored. */
export const data = (bytes = 480): BuiltChunk => chunk('data', new Uint8Array(bytes));

/** Audio of any length that takes up no memory. */
export const hugeData = (bytes: number, size = Math.min(bytes, 0xffff_ffff)): BuiltChunk =>
  chunk('data', new Uint8Array(0), { size, hole: bytes });

/** ds64 payload (EBU Tech 3306), with a table of other chunks. */
export const ds64 = (
  riffSize: number,
  dataSize: number,
  samples: number,
  table: readonly [string, number][] = [],
): BuiltChunk =>
  chunk(
    'ds64',
    join(
      u64(riffSize),
      u64(dataSize),
      u64(samples),
      u32(table.length),
      ...table.map(([id, size]) => join(bytesOf(id), u64(size))),
    ),
  );

interface Stretch {
  readonly at: number;
  readonly bytes: Uint8Array;
}

export interface BuiltWave extends ByteSource {
  /** How many bytes were read so far. */
  readonly spent: () => number;
  readonly reads: () => number;
  /** Byte position of the nth chunk's header. */
  readonly chunkAt: (index: number) => number;
  readonly toBytes: () => Uint8Array;
}

export interface WaveWanted {
  readonly name?: string;
  readonly container?: 'RIFF' | 'RF64' | 'BW64';
  readonly riffSize?: number;
  readonly after?: Uint8Array;
}

/** Lays the chunks out one after the other, padded, and gives a source that counts what is read of it. */
export function buildWave(chunks: readonly BuiltChunk[], wanted: WaveWanted = {}): BuiltWave {
  const { name = '21A-3.wav', container = 'RIFF', after = new Uint8Array(0) } = wanted;
  const stretches: Stretch[] = [];
  const starts: number[] = [];
  let at = 12;
  for (const { id, payload, size, unpadded, hole = 0 } of chunks) {
    starts.push(at);
    const length = payload.byteLength + hole;
    stretches.push({ at, bytes: join(bytesOf(id), u32(size ?? length), payload) });
    at += 8 + length + (length % 2 === 1 && !unpadded ? 1 : 0);
  }
  stretches.push({ at, bytes: after });
  const size = at + after.byteLength;
  const riffSize = wanted.riffSize ?? (container === 'RIFF' ? Math.min(size - 8, 0xffff_ffff) : 0xffff_ffff);
  stretches.unshift({ at: 0, bytes: join(bytesOf(container), u32(riffSize), bytesOf('WAVE')) });
  return sparseSource(name, size, stretches, starts);
}

function sparseSource(name: string, size: number, stretches: Stretch[], starts: number[]): BuiltWave {
  let spent = 0;
  let reads = 0;
  const slice = (from: number, to: number): Uint8Array => {
    const bytes = new Uint8Array(Math.max(0, Math.min(to, size) - from));
    for (const stretch of stretches) {
      const first = Math.max(from, stretch.at);
      const last = Math.min(from + bytes.byteLength, stretch.at + stretch.bytes.byteLength);
      if (first < last)
        bytes.set(stretch.bytes.subarray(first - stretch.at, last - stretch.at), first - from);
    }
    return bytes;
  };
  return {
    name,
    size,
    read: (from, to) => {
      const bytes = slice(from, to);
      spent += bytes.byteLength;
      reads += 1;
      return Promise.resolve(bytes);
    },
    spent: () => spent,
    reads: () => reads,
    chunkAt: (index) => starts[index]!,
    toBytes: () => slice(0, size),
  };
}

/** A source over bytes already there. */
export const sourceOf = (bytes: Uint8Array, name = 'bytes.wav'): ByteSource => ({
  name,
  size: bytes.byteLength,
  read: (from, to) => Promise.resolve(bytes.slice(from, to)),
});
