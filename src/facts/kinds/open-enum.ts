import * as z from 'zod/mini';
import { type Open, WORD } from '../../shared/open-word.ts';

/**
 * An enumeration without which the rest of its fact still says something. A word of a newer version is kept, shown as
 * unknown and never counted as any of the known ones. Where the whole fact hangs on the word, use `z.enum`: then the
 * fact is one of a newer version (see `readFact`).
 */
export const openEnum = <const Word extends string>(words: readonly Word[]): z.ZodMiniType<Open<Word>> =>
  z.union([z.enum(words), z.string().check(z.regex(WORD))]) as unknown as z.ZodMiniType<Open<Word>>;
