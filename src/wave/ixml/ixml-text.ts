import { decodeBytes } from '../riff/text-field.ts';

export interface IXmlText {
  readonly text: string;
  readonly encoding: 'ascii' | 'utf-8' | 'windows-1252' | 'utf-16le' | 'utf-16be' | 'declared';
}

const UTF_16LE = new TextDecoder('utf-16le');
const UTF_16BE = new TextDecoder('utf-16be');

/**
 * The text of an iXML payload. The chunk names no encoding and may hold one-byte or two-byte text (iXML 3.01,
 * the iXML chunk), so a byte-order mark or the first tag decides, then the XML declaration; NULs and control characters, which XML
 * forbids, are removed.
 */
export function readIXmlText(payload: Uint8Array): IXmlText {
  const bytes = payload.subarray(firstByteOfText(payload));
  const wide = wideEncoding(bytes);
  const decoded = wide
    ? { text: decoderOf(wide).decode(wholeCharacters(bytes)), encoding: wide }
    : decodeNarrow(bytes.subarray(0, lengthWithoutNuls(bytes)));
  return { text: cleaned(decoded.text), encoding: decoded.encoding };
}

/** Strict UTF-8, then what the XML declaration names (XML 1.0, section 4.3.3), then what accepts every byte. */
function decodeNarrow(bytes: Uint8Array): IXmlText {
  const decoded = decodeBytes(bytes);
  if (decoded.encoding !== 'windows-1252') return decoded;
  const declared = declaredEncoding(bytes);
  const text = declared && declaredText(bytes, declared);
  return text === undefined ? decoded : { text, encoding: 'declared' };
}

/** The declaration itself is in ASCII whatever it declares. */
function declaredEncoding(bytes: Uint8Array): string | undefined {
  const head = String.fromCharCode(...bytes.subarray(0, 200));
  return /^\s*<\?xml[^>]*\sencoding\s*=\s*["']([\w.:-]{1,40})["']/.exec(head)?.[1];
}

/** By the platform's decoder; undefined if it does not know the name, or the bytes are not in it. */
function declaredText(bytes: Uint8Array, encoding: string): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Padding may come before the text too; an odd run of NULs may end in half a character, so keep one. */
function firstByteOfText(bytes: Uint8Array): number {
  const first = bytes.findIndex((byte) => byte !== 0);
  if (first <= 0) return 0;
  return first % 2 === 1 && bytes[first] === 0x3c && bytes[first + 1] === 0 ? first - 1 : first;
}

function wideEncoding(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  const [a, b, c, d] = bytes;
  if (a === 0xff && b === 0xfe) return 'utf-16le';
  if (a === 0xfe && b === 0xff) return 'utf-16be';
  // '<' and one more character, each with an empty half.
  if (a === 0x3c && b === 0 && c !== 0 && d === 0) return 'utf-16le';
  if (a === 0 && b === 0x3c && c === 0 && d !== 0) return 'utf-16be';
  return undefined;
}

const decoderOf = (wide: 'utf-16le' | 'utf-16be'): TextDecoder => (wide === 'utf-16le' ? UTF_16LE : UTF_16BE);

/** A chunk of odd length ends in half a character, which would decode to a replacement character. */
const wholeCharacters = (bytes: Uint8Array): Uint8Array =>
  bytes.subarray(0, bytes.byteLength - (bytes.byteLength % 2));

function lengthWithoutNuls(bytes: Uint8Array): number {
  let length = bytes.byteLength;
  while (length > 0 && bytes[length - 1] === 0) length -= 1;
  return length;
}

/** Characters not allowed anywhere in XML 1.0; tab, line feed and carriage return are fine. */
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;

const cleaned = (text: string): string =>
  text
    .replace(/^[\ufeff\s]+/, '')
    .replaceAll(FORBIDDEN, '')
    .trimEnd();
