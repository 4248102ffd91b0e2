import { crc32 } from '../../facts/day-file/crc32.ts';
import { addInto, blocksIn } from './blocks.ts';
import type { Piece } from './series.ts';

/** How much of a series was read. */
export interface Progress {
  readonly read: number;
  readonly count: number;
}

/** A sum of blocks, and which they are. */
interface Row {
  readonly chosen: Uint8Array;
  readonly block: Uint8Array;
}

/**
 * Puts the pieces of a series together, in any order, some missing, some twice: equations over bits, solved by
 * elimination. A piece of another series starts anew, because the other phone did.
 */
export class Collector {
  #first: Piece | undefined;
  /** By the first block that each still holds. */
  #rows: (Row | undefined)[] = [];
  #read = 0;

  /** Whether the piece brought anything. */
  take(piece: Piece): boolean {
    if (!this.#first || !isOfSame(this.#first, piece)) this.#startWith(piece);
    const row: Row = {
      chosen: blocksIn(piece.number, this.#rows.length, piece.series),
      block: piece.block.slice(),
    };
    for (let at = 0; at < this.#rows.length; at += 1) {
      if (!row.chosen[at]) continue;
      const known = this.#rows[at];
      if (!known) {
        this.#rows[at] = row;
        this.#read += 1;
        return true;
      }
      addRow(row, known);
    }
    return false;
  }

  get progress(): Progress {
    return { read: this.#read, count: this.#rows.length };
  }

  /** All the bytes, once everything was read and their check is right; until then null. */
  bytes(): Uint8Array | null {
    if (!this.#first || this.#read < this.#rows.length) return null;
    const { length, blockSize, series } = this.#first;
    const rows = this.#rows as Row[];
    const all = new Uint8Array(rows.length * blockSize);
    for (let at = rows.length - 1; at >= 0; at -= 1) {
      const row = rows[at]!;
      for (let later = at + 1; later < rows.length; later += 1)
        if (row.chosen[later]) addRow(row, rows[later]!);
      all.set(row.block, at * blockSize);
    }
    const bytes = all.slice(0, length);
    return crc32(bytes) === series ? bytes : null;
  }

  #startWith(piece: Piece): void {
    this.#first = piece;
    this.#rows = new Array<Row | undefined>(Math.ceil(piece.length / piece.blockSize)).fill(undefined);
    this.#read = 0;
  }
}

const isOfSame = (one: Piece, other: Piece): boolean =>
  one.series === other.series && one.length === other.length && one.blockSize === other.blockSize;

function addRow(to: Row, from: Row): void {
  addInto(to.chosen, from.chosen);
  addInto(to.block, from.block);
}
