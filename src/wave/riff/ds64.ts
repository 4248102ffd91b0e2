import { FOUR_CC, type Token, U64, viewOf } from './byte-view.ts';

/** The 64-bit sizes of a file whose 32-bit size fields cannot hold them. */
export interface Ds64 {
  readonly riffSize: number;
  readonly dataSize: number;
  /** Sample frames; in BW64 this field means nothing. */
  readonly sampleCount: number;
  /** Sizes of chunks other than `data`, by id, in file order. */
  readonly others: ReadonlyMap<string, readonly number[]>;
}

const FIXED = 28;
/** A file has a handful of chunks above 4 GiB at most; a longer table is damage. */
const MAX_ENTRIES = 64;

/** Most bytes of a ds64 payload worth reading. */
export const DS64_MOST_BYTES = FIXED + 12 * MAX_ENTRIES;

// EBU Tech 3306, ds64 chunk: riffSize, dataSize, sampleCount as 64 bits each, low word first, then
// tableLength, a number of entries (not of bytes), each a chunk id and a 64-bit size. ITU-R BS.2088 has the
// same layout.
const DS64_ENTRY: Token<{ id: string; size: number }> = {
  len: 12,
  get: (view, at) => ({ id: FOUR_CC.get(view, at), size: U64.get(view, at + 4) }),
};

/** Reads the payload as far as it goes; undefined if shorter than the 28 bytes every ds64 has. */
export function readDs64(payload: Uint8Array): Ds64 | undefined {
  if (payload.byteLength < FIXED) return undefined;
  const view = viewOf(payload);
  const fitting = Math.floor((payload.byteLength - FIXED) / DS64_ENTRY.len);
  const entries = Math.min(view.getUint32(24, true), fitting, MAX_ENTRIES);
  const others = new Map<string, number[]>();
  for (let index = 0; index < entries; index += 1) {
    const { id, size } = DS64_ENTRY.get(view, FIXED + index * DS64_ENTRY.len);
    others.set(id, [...(others.get(id) ?? []), size]);
  }
  return {
    riffSize: U64.get(view, 0),
    dataSize: U64.get(view, 8),
    sampleCount: U64.get(view, 16),
    others,
  };
}
