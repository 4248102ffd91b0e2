import { fail, ok, type ProblemOf, type Result } from '../../shared/result.ts';

/**
 * The bytes of one file; an adapter puts a File or a path behind it. `read` returns the bytes from `from` up
 * to but not including `to`, fewer only at the end of the file, and rejects if the device fails.
 */
export interface ByteSource {
  readonly name: string;
  readonly size: number;
  read(from: number, to: number): Promise<Uint8Array>;
}

/** No file may cost more bytes than this, whatever its headers say: 4 MiB of iXML and 1 MiB for the rest. */
export const READ_BUDGET = 5 * 1024 * 1024;

/** Bytes fetched at the head, after the audio, and at every further jump. */
const FIRST_WINDOW = 8 * 1024;
const SECOND_WINDOW = 16 * 1024;
const LATER_WINDOW = 1024;

interface Piece {
  readonly from: number;
  readonly bytes: Uint8Array;
}

export type ReadProblem = ProblemOf<'file-unreadable' | 'file-ends-early' | 'read-budget-spent'>;

/** Reads small pieces of one file, slightly ahead: a typical file takes two reads. Counts the bytes. */
export class HeaderReader {
  readonly size: number;
  bytesRead = 0;
  readonly #source: ByteSource;
  readonly #pieces: Piece[] = [];

  constructor(source: ByteSource) {
    this.#source = source;
    this.size = source.size;
  }

  /** Exactly the bytes from..to-1; a problem if the file, the device or the budget ends before. */
  async bytes(from: number, to: number): Promise<Result<Uint8Array, ReadProblem>> {
    const held = this.#held(from, to);
    if (held) return ok(held);
    if (to > this.size) return fail({ code: 'file-ends-early', at: this.size });
    const until = Math.min(this.size, Math.max(to, from + this.#windowLength()));
    if (this.bytesRead + (until - from) > READ_BUDGET) return fail({ code: 'read-budget-spent', at: from });
    const fetched = await this.#fetch(from, until);
    if (!fetched.ok) return fetched;
    const bytes = fetched.value;
    if (bytes.byteLength < to - from) return fail({ code: 'file-ends-early', at: from + bytes.byteLength });
    return ok(bytes.subarray(0, to - from));
  }

  #held(from: number, to: number): Uint8Array | undefined {
    const piece = this.#pieces.find((one) => from >= one.from && to <= one.from + one.bytes.byteLength);
    return piece?.bytes.subarray(from - piece.from, to - piece.from);
  }

  #windowLength(): number {
    return [FIRST_WINDOW, SECOND_WINDOW][this.#pieces.length] ?? LATER_WINDOW;
  }

  async #fetch(from: number, until: number): Promise<Result<Uint8Array, ReadProblem>> {
    try {
      const bytes = await this.#source.read(from, until);
      this.bytesRead += bytes.byteLength;
      this.#pieces.push({ from, bytes });
      return ok(bytes);
    } catch {
      return fail({ code: 'file-unreadable', at: from });
    }
  }
}
