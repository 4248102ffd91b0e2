import { crc32 } from '../../facts/day-file/crc32.ts';
import { fromBase45, toBase45 } from './base45.ts';

/** Writes the bytes of one code. */
export class ByteWriter {
  readonly #bytes: number[] = [];

  /** A whole number of so many bytes, highest first. */
  number(value: number, bytes: number): this {
    for (let at = bytes - 1; at >= 0; at -= 1) this.#bytes.push(Math.floor(value / 256 ** at) % 256);
    return this;
  }

  bytes(more: Uint8Array): this {
    this.#bytes.push(...more);
    return this;
  }

  /** Up to 255 characters of ASCII, with their number before them. */
  ascii(text: string): this {
    this.number(text.length, 1);
    for (let at = 0; at < text.length; at += 1) this.number(text.charCodeAt(at), 1);
    return this;
  }

  /** The text of the code, with a check at its end. */
  code(): string {
    const bytes = Uint8Array.from(this.#bytes);
    return toBase45(Uint8Array.from([...bytes, ...checkOf(bytes)]));
  }
}

const CHECK_BYTES = 4;

const checkOf = (bytes: Uint8Array): number[] => {
  const crc = crc32(bytes);
  return [crc >>> 24, (crc >>> 16) & 0xff, (crc >>> 8) & 0xff, crc & 0xff];
};

/** Reads the bytes of one code. What is beyond its end reads as 0, and `isWhole` says so. */
export class ByteReader {
  readonly #bytes: Uint8Array;
  #at = 0;

  constructor(bytes: Uint8Array) {
    this.#bytes = bytes;
  }

  number(bytes: number): number {
    let value = 0;
    for (let count = 0; count < bytes; count += 1) {
      value = value * 256 + (this.#bytes[this.#at] ?? 0);
      this.#at += 1;
    }
    return value;
  }

  ascii(): string {
    const length = this.number(1);
    return String.fromCharCode(...Array.from({ length }, () => this.number(1)));
  }

  rest(): Uint8Array {
    return this.#bytes.slice(this.#at);
  }

  get isWhole(): boolean {
    return this.#at <= this.#bytes.length;
  }
}

/** The bytes of a code, without their check; null for what is no code of this app, or misread. */
export function readCode(text: string): ByteReader | null {
  const bytes = fromBase45(text);
  if (!bytes || bytes.length <= CHECK_BYTES) return null;
  const said = bytes.slice(0, -CHECK_BYTES);
  const check = bytes.slice(-CHECK_BYTES);
  return checkOf(said).every((byte, at) => byte === check[at]) ? new ByteReader(said) : null;
}
