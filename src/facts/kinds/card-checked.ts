import * as z from 'zod/mini';
import { factIdText, idText, longText, shortText, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';

const count = wholeNumber(0, 100_000);

/** The card was compared with the log: so many files and recordings, and so many differences left open. */
export const cardChecked = kind('card-checked', z.object({ files: count, recordings: count, open: count }));

/**
 * A difference between card and log was looked at and the log stands; `code` says which kind of difference, and `values` what
 * either said. Earlier versions did not say the values, and their word holds for any.
 */
export const differenceKept = kind(
  'difference-kept',
  z.object({
    code: shortText,
    take: z.optional(factIdText),
    file: z.optional(shortText),
    track: z.optional(idText),
    values: z.optional(longText),
  }),
);
