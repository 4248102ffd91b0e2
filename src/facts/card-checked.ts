import * as z from 'zod/mini';
import { factIdText, idText, shortText, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';

const count = wholeNumber(0, 100_000);

/** The card was laid beside the log: so many files and recordings, and so many differences left open. */
export const cardChecked = kind('card-checked', () =>
  z.object({ files: count, recordings: count, open: count }),
);

/** A difference between card and log was looked at and the log stands; `code` says which kind of difference. */
export const differenceKept = kind('difference-kept', () =>
  z.object({
    code: shortText,
    take: z.optional(factIdText),
    file: z.optional(shortText),
    track: z.optional(idText),
  }),
);
