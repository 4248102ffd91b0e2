import * as z from 'zod/mini';
import { type Open, WORD } from '../../shared/open-word.ts';

/**
 * An enum in a fact that makes sense even without it. A newer version's word is kept, shown as unknown, and
 * never counted as a known one. If the whole fact depends on the word, use `z.enum`: then the fact counts as
 * unknown (see `readFact`).
 */
export const openEnum = <const Word extends string>(words: readonly Word[]): z.ZodMiniType<Open<Word>> =>
  z.union([z.enum(words), z.string().check(z.regex(WORD))]) as unknown as z.ZodMiniType<Open<Word>>;
