import * as z from 'zod/mini';
import { factIdText, idText, longText, shortText, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';

const count = wholeNumber(0, 100_000);

/** The card was compared with the log: its files and recordings, and how many differences are open. */
export const cardChecked = kind('card-checked', z.object({ files: count, recordings: count, open: count }));

/**
 * A difference between card and log was reviewed and the log kept; `code` is the kind of difference and
 * `values` both sides. Earlier versions did not store the values, so there it covers any.
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
