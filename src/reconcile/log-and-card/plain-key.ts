/** Letters that a recorder without them writes plainly, and that no accent can be taken from. */
const PLAIN: Readonly<Record<string, string>> = {
  Ł: 'L',
  Ø: 'O',
  Đ: 'D',
  Æ: 'AE',
  Œ: 'OE',
  Þ: 'TH',
  Ð: 'D',
  İ: 'I',
};

/**
 * Normalised text: ignores case, accents, width and kind of white space. `' inés  B '` is `'INES B'`. Marks of
 * other scripts are letters and stay.
 */
export const plainKey = (text: string): string => {
  // Most names are plain already, and a card is compared name by name.
  const plain = ASCII.test(text) ? text : withoutAccents(text);
  return plain.replaceAll(/\s+/g, ' ').trim().toUpperCase();
};

const ASCII = /^[\x20-\x7e]*$/;

const withoutAccents = (text: string): string =>
  text
    .normalize('NFKD')
    .replaceAll(/[\u0300-\u036f]/g, '')
    .normalize('NFKC')
    .toUpperCase()
    .replaceAll(/[ŁØĐÆŒÞÐİ]/g, (letter) => PLAIN[letter] ?? letter);

/**
 * A normalised scene, slate or roll: also ignores marks between letters, leading zeros, and the word scene
 * before a number. `'Sc. 024-b'` is `'24B'`.
 */
export const slateKey = (text: string): string =>
  plainKey(text)
    .replaceAll(/[^\p{L}\p{N}]+/gu, '')
    .replaceAll(/(?<!\d)0+(?=\d)/g, '')
    .replace(/^SC(?:ENE)?(?=\d)/, '');

/** A normalised file name without extension or path. */
export const stemKey = (name: string): string => plainKey(stemOf(name));

/** A file's name without path and ending, as written. */
export const stemOf = (name: string): string =>
  name.replace(/^.*[/\\]/s, '').replace(/\.[A-Za-z0-9]{1,5}$/, '');

/** The number in a take's text: 3 for `'3'`, `'T03'`, `'3 PU'`; undefined above 9999 or if none. */
export function takeNumber(text: string | undefined): number | undefined {
  const digits = /\d+/.exec(text ?? '')?.[0];
  const number = Number(digits);
  return digits !== undefined && number <= 9999 ? number : undefined;
}

/** At most so many UTF-16 units, as a log counts them, never splitting a character. */
export function cutText(text: string, most: number): string {
  if (text.length <= most) return text;
  const last = text.charCodeAt(most - 1);
  const isHalf = last >= 0xd800 && last < 0xdc00;
  return text.slice(0, isHalf ? most - 1 : most);
}
