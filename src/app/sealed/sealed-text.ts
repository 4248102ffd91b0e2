import { type Bundle, bundleBytes, readBundle } from '../../exchange/sealed/bundle.ts';

/** Text, because share sheets and mail take text from everybody. */
const BEGINS = 'rollbook-sealed';
const LINE = 76;
/** A call takes so many arguments and no more. */
const PIECE = 8192;

export const isSealedText = (text: string): boolean => text.trimStart().startsWith(BEGINS);

/** A sealed file (base64, RFC 4648, in lines as RFC 2045 has them). */
export function sealedText(bundle: Bundle): string {
  const bytes = bundleBytes(bundle);
  let binary = '';
  for (let at = 0; at < bytes.length; at += PIECE)
    binary += String.fromCharCode(...bytes.subarray(at, at + PIECE));
  return `${BEGINS}\n${btoa(binary).replace(new RegExp(`.{${LINE}}`, 'g'), '$&\n')}\n`;
}

/** Null for any other text. */
export function readSealedText(text: string): Bundle | null {
  if (!isSealedText(text)) return null;
  try {
    const binary = atob(text.trimStart().slice(BEGINS.length).replace(/\s/g, ''));
    return readBundle(Uint8Array.from(binary, (character) => character.charCodeAt(0)));
  } catch {
    return null;
  }
}
