declare const newer: unique symbol;

/** An enum value that only a newer version knows. At run time it is just the string. */
export type UnknownWord = string & { readonly [newer]: true };

/** A value of an enum that may have grown since. */
export type Open<Word extends string> = Word | UnknownWord;

/** What an enum value may look like: no damage, markup or sentences. */
export const WORD = /^[a-z0-9]([\w.-]{0,38}[a-z0-9])?$/i;

export const isWord = (value: unknown): value is string => typeof value === 'string' && WORD.test(value);

/** Whether the word is one of these, rather than one from a newer version. */
export const isOneOf = <const Word extends string>(words: readonly Word[], word: string): word is Word =>
  (words as readonly string[]).includes(word);

/** How an unknown word is shown. */
export const unknownText = (word: string): string => `unknown: ${word}`;

/** Looks a word up: `wordIn({ mic: 'Mic' }, 'mic')` is `'Mic'`; a newer word is `'unknown: laser'`. */
export const wordIn = <Word extends string>(
  table: Readonly<Record<Word, string>>,
  word: Open<Word>,
): string => (Object.hasOwn(table, word) ? table[word as Word] : unknownText(word));

/** A word shown unchanged: `wordOf(['pre', 'post'], 'pre')` is `'pre'`. */
export const wordOf = <Word extends string>(words: readonly Word[], word: Open<Word>): string =>
  isOneOf(words, word) ? word : unknownText(word);
