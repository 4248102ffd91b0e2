import * as z from 'zod/mini';
import { HIGHEST_COUNTER } from '../../shared/ids.ts';
import { factIdText, longText, shortText, text, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

export const PAPERS = ['a4', 'letter'] as const;
export const ROUTES = ['share', 'download', 'copy', 'mail'] as const;
/** What a line of the table is of. */
export const TABLE_LINES = ['take', 'track'] as const;

/** How a report is made besides the day itself: kept with what was sent, so that it can be made again. */
const made = z.object({
  paper: openEnum(PAPERS),
  lines: openEnum(TABLE_LINES),
  columns: z.array(text(40)).check(z.maxLength(60)),
  signature: longText,
  /** What was open besides what the day itself shows: a roll used on another day. */
  matters: z.array(shortText).check(z.maxLength(20)),
});
export type ReportMade = z.infer<typeof made>;

/**
 * What the files were made from, noted when they were made and not when they were handed over. `known` has for every
 * writer the highest counter there was; `unread` the facts of a newer version, which say nothing in this report even
 * after an update understands them; `checks` the CRC-32 of each file, to tell whether it is the same when made again.
 */
const from = z.object({
  known: z.record(z.string().check(z.regex(/^[0-9a-z]{11}$/)), wholeNumber(0, HIGHEST_COUNTER)),
  unread: z.optional(z.array(factIdText).check(z.maxLength(2000))),
  checks: z.optional(z.array(wholeNumber(0, 0xff_ff_ff_ff)).check(z.maxLength(20))),
});
export type ReportFrom = z.infer<typeof from>;

/**
 * A report left the phone. What it said follows from the facts that were known then; handed over does not mean arrived.
 */
export const reportSent = kind(
  'report-sent',
  z.object({
    letter: text(8),
    route: openEnum(ROUTES),
    files: z.array(shortText).check(z.maxLength(20)),
    to: z.array(shortText).check(z.maxLength(50)),
    made: made,
    /** Absent on the first reports this app recorded: those were made from all that was known when they were noted. */
    from: z.optional(from),
  }),
);
