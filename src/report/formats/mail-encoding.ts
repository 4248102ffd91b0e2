const utf8 = new TextEncoder();
const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const BYTES_PER_LINE = 57;

/** Base64 without line breaks (RFC 4648 section 4). */
export function base64(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(at, at + 3);
    const left = bytes.length - at;
    parts.push(
      DIGITS[a >> 2]! + DIGITS[((a & 3) << 4) | (b >> 4)]!,
      left > 1 ? DIGITS[((b & 15) << 2) | (c >> 6)]! : '=',
      left > 2 ? DIGITS[c & 63]! : '=',
    );
  }
  return parts.join('');
}

/** Base64 in lines of 76 characters that end in CR LF (RFC 2045 section 6.8). */
export function base64Lines(bytes: Uint8Array): string {
  const lines: string[] = [];
  for (let at = 0; at < bytes.length; at += BYTES_PER_LINE) {
    lines.push(`${base64(bytes.subarray(at, at + BYTES_PER_LINE))}\r\n`);
  }
  return lines.join('');
}

const hex = (byte: number): string => byte.toString(16).toUpperCase().padStart(2, '0');

const LONGEST_LINE = 76;

/**
 * Quoted-printable (RFC 2045 section 6.7): lines of at most 76 characters ending in CR LF, soft breaks marked
 * by `=`, no space before a line end, and no character split.
 */
export const quotedPrintable = (text: string): string =>
  text
    .replaceAll(/\r\n?/g, '\n')
    .split('\n')
    .map((line) => softBroken(line).join('=\r\n'))
    .join('\r\n');

function softBroken(line: string): string[] {
  const lines = [''];
  const characters = [...line];
  for (const [at, character] of characters.entries()) {
    const last = at === characters.length - 1;
    const plain = /[!-<>-~]/.test(character) || (/[ \t]/.test(character) && !last);
    const written = plain ? character : [...utf8.encode(character)].map((byte) => `=${hex(byte)}`).join('');
    const room = last ? LONGEST_LINE : LONGEST_LINE - 1;
    if (lines.at(-1)!.length + written.length > room) lines.push('');
    lines[lines.length - 1] += written;
  }
  return lines;
}

/** Encoded words have at most 75 characters (RFC 2047 section 2): 12 around 60 of base64, or 45 bytes. */
const BYTES_PER_WORD = 45;

/**
 * Text for a header field: unchanged if plain ASCII, else as encoded words of whole characters (RFC 2047
 * sections 2 and 5). `encodedWords('Größe')` is `['=?UTF-8?B?R3LDtsOfZQ==?=']`.
 */
export function encodedWords(text: string): string[] {
  if (/^[ -~]*$/.test(text) && !text.includes('=?') && text.split(' ').every((word) => word.length < 70)) {
    return text.split(' ');
  }
  const chunks: number[][] = [[]];
  for (const character of text) {
    const bytes = utf8.encode(character);
    if (chunks.at(-1)!.length + bytes.length > BYTES_PER_WORD) chunks.push([]);
    chunks.at(-1)!.push(...bytes);
  }
  return chunks.map((bytes) => `=?UTF-8?B?${base64(Uint8Array.from(bytes))}?=`);
}

/** A header field, folded to lines of at most 76 characters if possible (RFC 5322 section 2.2.3). */
export function headerField(name: string, words: readonly string[]): string {
  let field = `${name}:`;
  let length = field.length;
  for (const word of words) {
    const folds = length + 1 + word.length > LONGEST_LINE;
    field += folds ? `\r\n ${word}` : ` ${word}`;
    length = folds ? 1 + word.length : length + 1 + word.length;
  }
  return `${field}\r\n`;
}

const VALUE_PER_LINE = 54;

/**
 * A file name as parameters: quoted if short ASCII (RFC 2183 section 2), else in RFC 2231 form, in numbered
 * pieces if long. `fileNameParameters('Scène 12.csv')` is `["filename*=UTF-8''Sc%C3%A8ne%2012.csv"]`.
 */
export function fileNameParameters(name: string): string[] {
  if (/^[ !#-[\]-~]{1,54}$/.test(name)) return [`filename="${name}"`];
  const encoded = [...name].map((character) =>
    /[A-Za-z0-9._-]/.test(character)
      ? character
      : [...utf8.encode(character)].map((byte) => `%${hex(byte)}`).join(''),
  );
  const pieces = [''];
  for (const character of encoded) {
    if (pieces.at(-1)!.length + character.length > VALUE_PER_LINE) pieces.push('');
    pieces[pieces.length - 1] += character;
  }
  if (pieces.length === 1) return [`filename*=UTF-8''${pieces[0]}`];
  return pieces.map((piece, at) => `filename*${at}*=${at === 0 ? "UTF-8''" : ''}${piece}`);
}
