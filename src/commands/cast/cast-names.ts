/** How the words of names are written, for reading cast lists. */

const SMALL_WORDS = new Set(['of', 'the', 'and', 'in', 'at', 'with', 'de', 'da', 'van', 'von', 'der', 'den']);

export const hasLetter = (text: string): boolean => /\p{L}/u.test(text);
const hasCase = (text: string): boolean => text.toUpperCase() !== text.toLowerCase();
/** Every letter that could be small is a capital: 'DR. O’NEIL 2'. False where no letter has case. */
export const isUpper = (text: string): boolean => hasCase(text) && text === text.toUpperCase();
/** No letter that could be a capital is one. False where no letter has case. */
export const isLower = (text: string): boolean => hasCase(text) && text === text.toLowerCase();
export const wordsOf = (text: string): string[] => text.split(/\s+/).filter(Boolean);

/**
 * Text as it may be shown: spaces of every sort become plain ones, and characters that are not seen or that turn the
 * direction of writing go, except the joiners some scripts need.
 */
export function withoutUnseen(text: string): string {
  return text.replace(/[\p{Zs}\v\f]/gu, ' ').replace(/(?![\t\u200c\u200d])[\p{Cc}\p{Cf}\p{Cs}]/gu, '');
}

/**
 * A name without the quotes and separators around it, and not in capitals: 'ANNE-MARIE O’NEIL' is 'Anne-Marie
 * O’Neil', 'MAN OF THE HOUSE' is 'Man of the House'. Kept as typed are names of mixed case, names of up to three
 * letters, initials ('J.R.'), Roman numerals, short words without a vowel ('DJ'), and formulas, which stay harmless text.
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

/** Whether this can be the name of a part or a person, and not a remark: up to eight words, and no sentence. */
export function isName(text: string): boolean {
  const words = wordsOf(text);
  if (!hasLetter(text) || words.length > 8 || /@|:\/\//.test(text)) return false;
  return !/[!?;]$/.test(text) && !/\p{L}{4,}\.$/u.test(text);
}
