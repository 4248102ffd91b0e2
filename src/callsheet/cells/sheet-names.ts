/** How names are written, for parsing cast lists. */

const SMALL_WORDS = new Set(['of', 'the', 'and', 'in', 'at', 'with', 'de', 'da', 'van', 'von', 'der', 'den']);

export const hasLetter = (text: string): boolean => /\p{L}/u.test(text);
const hasCase = (text: string): boolean => text.toUpperCase() !== text.toLowerCase();
/** Every cased letter is a capital: 'DR. O’NEIL 2'. False if no letter has case. */
export const isUpper = (text: string): boolean => hasCase(text) && text === text.toUpperCase();
/** No cased letter is a capital. False if no letter has case. */
export const isLower = (text: string): boolean => hasCase(text) && text === text.toLowerCase();
export const wordsOf = (text: string): string[] => text.split(/\s+/).filter(Boolean);

/**
 * Text safe to show: all spaces become plain ones; invisible and direction-changing characters are removed,
 * except joiners that some scripts need.
 */
export function withoutUnseen(text: string): string {
  return text.replace(/[\p{Zs}\v\f]/gu, ' ').replace(/(?![\t\u200c\u200d])[\p{Cc}\p{Cf}\p{Cs}]/gu, '');
}

/**
 * A name without surrounding quotes and separators, and not in capitals: 'ANNE-MARIE O’NEIL' is 'Anne-Marie
 * O’Neil', 'MAN OF THE HOUSE' is 'Man of the House'. Left as typed: mixed case, up to three letters, initials
 * ('J.R.'), Roman numerals, short words without a vowel ('DJ'), and formulas, which stay harmless text.
 */
export function tidyName(text: string): string {
  const bare = text
    .normalize('NFC')
    .replace(/^(?:[\s,;:|~.•·*–—-]|=+(?=[\s=]|$))+|[\s,;:|=~•·*–—-]+$/gu, '')
    .replace(/^(["'“”‘’«»])(.+)["'“”‘’«»]$/u, '$2')
    .replace(/\s+/g, ' ')
    .trim();
  const letters = bare.replace(/[^\p{L}]/gu, '');
  if (!isUpper(bare) || letters.length <= 3 || bare.startsWith('=')) return bare;
  return bare
    .split(' ')
    .map((word, index) => unshouted(word, index === 0))
    .join(' ');
}

const TITLES = new Set(['DR', 'MR', 'MRS', 'MS', 'ST', 'SGT', 'JR', 'SR']);

function unshouted(word: string, first: boolean): string {
  const letters = word.replace(/[^\p{L}]/gu, '');
  if (!first && SMALL_WORDS.has(word.toLowerCase())) return word.toLowerCase();
  if (/^(?:\p{L}\.)+\p{L}?\.?$/u.test(word) || /^[IVX]{2,}$/.test(word)) return word;
  if (letters.length <= 3 && !/[AEIOUYÀ-ÖØ-ÝΑ-Я]/u.test(letters) && !TITLES.has(letters)) return word;
  // A letter after an apostrophe is a capital in O'Neil and a small one in Queen's.
  return word
    .toLowerCase()
    .replace(
      /(^|[^\p{L}\p{M}\p{N}'’])(\p{L})/gu,
      (_, before: string, letter: string) => before + letter.toUpperCase(),
    )
    .replace(
      /^(\p{L}['’])(\p{L}{2})/u,
      (_, start: string, rest: string) => start + rest[0]!.toUpperCase() + rest[1],
    );
}

/** Whether this may be the name of a part or performer, not a remark: at most eight words, no sentence. */
export function isName(text: string): boolean {
  const words = wordsOf(text);
  if (!hasLetter(text) || words.length > 8 || /@|:\/\//.test(text)) return false;
  return !/[!?;]$/.test(text) && !/\p{L}{4,}\.$/u.test(text);
}
