/** Names reserved for devices on some file systems, with any extension. */
const RESERVED = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³]|conin\$|conout\$)$/i;

const LONGEST_STEM_BYTES = 100;

/**
 * A file name valid on every file system: no separators, control or format characters, no reserved names,
 * nothing at the ends that would be lost, at most 100 UTF-8 bytes before the extension. `safeName('../../x',
 * 'pdf')` is `'x.pdf'`. If nothing is left of the text, it is `otherwise`.
 */
export function safeName(text: string, ending: string, otherwise = 'unnamed'): string {
  const stem = safeStem(text, LONGEST_STEM_BYTES);
  // Some systems take the part before the first dot for a device name.
  const reserved = RESERVED.test(stem.split('.')[0]!.trim());
  return `${reserved ? `_${stem}` : stem || otherwise}.${ending}`;
}

/** The part of a text that is valid on every file system, ignoring device names; may be empty. */
export function safeStem(text: string, longestBytes: number): string {
  const plain = text
    .normalize('NFC')
    .replaceAll(/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}]/gu, '')
    .replaceAll(/[<>:"/\\|?*]/g, '-');
  return trimmed(cutToBytes(trimmed(plain), longestBytes));
}

/** Leading dots hide a file, leading hyphens look like options, trailing dots and spaces get lost. */
const trimmed = (text: string): string =>
  text
    .replaceAll(/\s+/g, ' ')
    .replace(/^[\s.\-~]+/, '')
    .replace(/[\s.-]+$/, '');

function cutToBytes(text: string, longest: number): string {
  let bytes = 0;
  let kept = '';
  for (const character of text) {
    const code = character.codePointAt(0)!;
    bytes += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
    if (bytes > longest) break;
    kept += character;
  }
  return kept;
}
