import { crc32 } from './crc32.ts';

const DIGITS = 8;

/** In place of a check: nobody can tell whether this entry is intact. */
export const NO_CHECK = '-'.repeat(DIGITS);

const utf8 = new TextEncoder();

/** CRC-32 over the UTF-8 of an entry as JSON, as eight digits: detects damage, not malice. */
export const entryCheck = (json: string): string =>
  crc32(utf8.encode(json)).toString(16).padStart(DIGITS, '0');

/** Splits the checks of entries: `checksIn('44d34d27cca68f67')` is `['44d34d27', 'cca68f67']`. */
export function checksIn(text: string): string[] {
  const checks: string[] = [];
  for (let at = 0; at < text.length; at += DIGITS) checks.push(text.slice(at, at + DIGITS));
  return checks;
}
