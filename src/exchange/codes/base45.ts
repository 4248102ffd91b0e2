/** The alphabet of RFC 9285: the characters that a QR code packs closest (ISO/IEC 18004, alphanumeric mode). */
const ALPHABET = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';

/** Bytes as text of RFC 9285: two bytes are three characters, a last single one is two. */
export function toBase45(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 2) {
    const isPair = at + 1 < bytes.length;
    let rest = isPair ? bytes[at]! * 256 + bytes[at + 1]! : bytes[at]!;
    for (let digit = 0; digit < (isPair ? 3 : 2); digit += 1) {
      text += ALPHABET[rest % 45];
      rest = Math.floor(rest / 45);
    }
  }
  return text;
}

/** Null where the text is not one that `toBase45` makes. */
export function fromBase45(text: string): Uint8Array | null {
  const last = text.length % 3;
  if (last === 1) return null;
  const bytes = new Uint8Array(Math.floor(text.length / 3) * 2 + (last ? 1 : 0));
  for (let from = 0, to = 0; from < text.length; from += 3) {
    const digits = [...text.slice(from, from + 3)].map((character) => ALPHABET.indexOf(character));
    if (digits.includes(-1)) return null;
    const value = digits.reduceRight((sum, digit) => sum * 45 + digit, 0);
    if (value > (digits.length === 3 ? 0xff_ff : 0xff)) return null;
    if (digits.length === 3) {
      bytes[to] = value >> 8;
      to += 1;
    }
    bytes[to] = value & 0xff;
    to += 1;
  }
  return bytes;
}
