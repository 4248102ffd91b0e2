declare const newer: unique symbol;

/** A word of an enumeration that this version does not know: a newer one wrote it. At run time it is the word itself. */
export type UnknownWord = string & { readonly [newer]: true };

/** A word of an enumeration that may have grown since. */
export type Open<Word extends string> = Word | UnknownWord;

/** What may come to be a word: nothing that is damage, markup or a sentence. */
export const WORD = /^[a-z0-9]([\w.-]{0,38}[a-z0-9])?$/i;

export const isWord = (value: unknown): value is string => typeof value === 'string' && WORD.test(value);

/** Whether a word is one of these, and none of a newer version. */
export const isOneOf = <const Word extends string>(words: readonly Word[], word: string): word is Word =>
  (words as readonly string[]).includes(word);

/** How a word that is not known here is shown. */
export const unknownText = (word: string): string => `unknown: ${word}`;

/** What a table has for a word: `wordIn({ mic: 'Mic' }, 'mic')` is `'Mic'`, and for a newer word `'unknown: laser'`. */
export const wordIn = <Word extends string>(
  table: Readonly<Record<Word, string>>,
  word: Open<Word>,
): string => (Object.hasOwn(table, word) ? table[word as Word] : unknownText(word));

/** A word that is shown as it is: `wordOf(['pre', 'post'], 'pre')` is `'pre'`. */
export const wordOf = <Word extends string>(words: readonly Word[], word: Open<Word>): string =>
  isOneOf(words, word) ? word : unknownText(word);
