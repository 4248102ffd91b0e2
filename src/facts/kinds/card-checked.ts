import * as z from 'zod/mini';
import { factIdText, idText, longText, shortText, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

const count = wholeNumber(0, 100_000);
const takes = z.optional(z.array(factIdText).check(z.maxLength(5000)));

/**
 * The files of one take as the card has them, where the log names them otherwise; on the card of this recorder,
 * or of the take's main one.
 */
const cardNames = z.object({
  take: factIdText,
  recorder: z.optional(idText),
  files: z
    .array(z.object({ name: shortText, track: z.optional(idText) }))
    .check(z.minLength(1), z.maxLength(500)),
});

/** What the cards of one recorder have: how many takes, and those that no other card has. */
const cardHas = z.object({ recorder: idText, takes: count, only: takes });

/**
 * The card was compared with the log: its files and recordings, and how many differences are open. Then what
 * earlier versions did not store: how many takes have a file, which have none, which may have one of several,
 * how many recordings are of no take, whether reading was stopped, how large the files are, and their names as they are.
 */
export const cardChecked = kind(
  'card-checked',
  z.object({
    files: count,
    recordings: count,
    open: count,
    matched: z.optional(count),
    without: takes,
    unsure: takes,
    unlogged: z.optional(count),
    stopped: z.optional(z.boolean()),
    bytes: z.optional(wholeNumber(0, 1e15)),
    names: z.optional(z.array(cardNames).check(z.maxLength(5000))),
    /** On a day with several recorders. */
    cards: z.optional(z.array(cardHas).check(z.maxLength(16))),
  }),
);

/** How a difference was settled: as the log has it, as the card has it, or the take's file is missing. */
export const SETTLED_AS = ['log', 'card', 'file-missing'] as const;

/**
 * A difference between card and log was reviewed. `code` is the kind of difference and `values` both sides;
 * without `as` the log was kept. Earlier versions did not store the values, so there it covers any.
 */
export const differenceKept = kind(
  'difference-kept',
  z.object({
    code: shortText,
    take: z.optional(factIdText),
    file: z.optional(shortText),
    track: z.optional(idText),
    values: z.optional(longText),
    as: z.optional(openEnum(SETTLED_AS)),
  }),
);
