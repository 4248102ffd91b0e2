export interface DecodedText {
  readonly text: string;
  readonly encoding: 'ascii' | 'utf-8' | 'windows-1252';
}

const UTF8 = new TextDecoder('utf-8', { fatal: true });
const WINDOWS_1252 = new TextDecoder('windows-1252');

/** Strict UTF-8, or else windows-1252, which accepts every byte. Nothing is masked to seven bits. */
export function decodeBytes(bytes: Uint8Array): DecodedText {
  try {
    const text = UTF8.decode(bytes);
    // Everything beyond ASCII takes more bytes than characters.
    return { text, encoding: text.length === bytes.byteLength ? 'ascii' : 'utf-8' };
  } catch {
    return { text: WINDOWS_1252.decode(bytes), encoding: 'windows-1252' };
  }
}

/**
 * A fixed-width text field: cut at the first NUL, since old values may be left after it; a full field has no
 * NUL (EBU Tech 3285, bext fields). Trimmed.
 */
export function decodeField(bytes: Uint8Array): DecodedText {
  const end = bytes.indexOf(0);
  const decoded = decodeBytes(end < 0 ? bytes : bytes.subarray(0, end));
  return { text: decoded.text.trim(), encoding: decoded.encoding };
}
