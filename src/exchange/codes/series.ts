import { crc32 } from '../../facts/day-file/crc32.ts';
import { addInto, blocksIn, blocksOf } from './blocks.ts';
import { ByteWriter, readCode } from './byte-text.ts';

/** The first byte of this form of code. */
const PIECE = 0x21;
/**
 * With the head and the check a code of version 18 at level L (ISO/IEC 18004: 1,046 characters): 89 modules, which a
 * phone reads off another at arm's length (common practice, no source).
 */
export const BLOCK_BYTES = 640;
/** A hundred full days: more is no day. */
export const MOST_BYTES = 1_000_000;

/** One code of a series that gives some bytes. */
export interface Piece {
  /** The check of all the bytes, which names the series. */
  readonly series: number;
  readonly length: number;
  readonly blockSize: number;
  readonly number: number;
  readonly block: Uint8Array;
}

/** Bytes as codes without end: first each block, then sums of blocks for whatever was missed. */
export interface Series {
  /** How many codes hold it all, if none is missed. */
  readonly count: number;
  code(number: number): string;
}

export function seriesOf(bytes: Uint8Array, blockSize = BLOCK_BYTES): Series {
  const blocks = blocksOf(bytes, blockSize);
  const series = crc32(bytes);
  return {
    count: blocks.length,
    code(number) {
      const block = new Uint8Array(blockSize);
      const chosen = blocksIn(number, blocks.length, series);
      for (const [at, one] of blocks.entries()) if (chosen[at]) addInto(block, one);
      return new ByteWriter()
        .number(PIECE, 1)
        .number(series, 4)
        .number(bytes.length, 3)
        .number(blockSize, 2)
        .number(number, 4)
        .bytes(block)
        .code();
    },
  };
}

/** Null for any other code. */
export function readPiece(text: string): Piece | null {
  const code = readCode(text);
  if (!code || code.number(1) !== PIECE) return null;
  const series = code.number(4);
  const length = code.number(3);
  const blockSize = code.number(2);
  const number = code.number(4);
  const block = code.rest();
  const isSound = length > 0 && length <= MOST_BYTES && blockSize > 0 && block.length === blockSize;
  return isSound ? { series, length, blockSize, number, block } : null;
}
