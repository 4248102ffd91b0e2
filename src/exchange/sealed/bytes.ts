import type { Bytes } from './sealing-crypto.ts';

export const utf8 = (text: string): Bytes => new TextEncoder().encode(text);

/** `'00ff1c'` */
export const hexOf = (bytes: Uint8Array): string =>
  Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');

/** The text must be hexadecimal digits, two a byte. */
export const bytesOfHex = (hex: string): Bytes =>
  Uint8Array.from({ length: hex.length >> 1 }, (_, at) => Number.parseInt(hex.slice(at * 2, at * 2 + 2), 16));

export function joined(...parts: readonly Uint8Array[]): Bytes {
  const all = new Uint8Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

export const isSameBytes = (one: Uint8Array, other: Uint8Array): boolean =>
  one.length === other.length && one.every((byte, at) => byte === other[at]);
