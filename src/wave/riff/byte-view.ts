/** A fixed structure: its size in bytes and how to read it; the caller checks the bounds first. */
export interface Token<T> {
  readonly len: number;
  get(view: DataView, at: number): T;
}

const TWO_32 = 4_294_967_296;

/** Two 32-bit words as one count. Exact below 2^53, which no file size or day of samples reaches. */
export const joinWords = (high: number, low: number): number => high * TWO_32 + low;

/** Unsigned 64-bit little-endian; above 2^53 the nearest number, still finite and still too large. */
export const U64: Token<number> = {
  len: 8,
  get: (view, at) => joinWords(view.getUint32(at + 4, true), view.getUint32(at, true)),
};

/** Four bytes as text, one character a byte. */
export const FOUR_CC: Token<string> = {
  len: 4,
  get: (view, at) =>
    String.fromCharCode(
      view.getUint8(at),
      view.getUint8(at + 1),
      view.getUint8(at + 2),
      view.getUint8(at + 3),
    ),
};

export const viewOf = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** The bytes as lower-case hex digits: `hexOf(Uint8Array.of(10, 255))` is `'0aff'`. */
export function hexOf(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += byte.toString(16).padStart(2, '0');
  return text;
}
