import * as z from 'zod/mini';
import { HIGHEST_COUNTER } from '../../shared/ids.ts';
import { factIdText, longText, momentMs, shortText, text, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

export const PAPERS = ['a4', 'letter'] as const;
export const ROUTES = ['share', 'download', 'copy', 'mail'] as const;
/** What one line of the table covers. */
export const TABLE_LINES = ['take', 'track'] as const;

/** Settings the report was made with besides the day itself, stored so that it can be remade. */
const made = z.object({
  paper: openEnum(PAPERS),
  lines: openEnum(TABLE_LINES),
  columns: z.array(text(40)).check(z.maxLength(60)),
  signature: longText,
  /** Open matters the day itself does not show: a roll used on another day. */
  matters: z.array(shortText).check(z.maxLength(20)),
  /** How the report was worded and laid out: see `report/form.ts`. Missing on the earliest reports. */
  form: z.optional(wholeNumber(1, 1000)),
  /** When the files were made, in which time zone: from the third form on every page says so. */
  issued: z.optional(z.object({ at: momentMs, zone: wholeNumber(-900, 900) })),
});
export type ReportMade = z.infer<typeof made>;

/**
 * What the files were made from, recorded when they were made rather than when they were sent. `known`: the
 * highest counter of every writer; `unread`: facts of a newer version, which stay out of this report even
 * once an update understands them; `checks`: the CRC-32 of each file, to tell whether a remade one is
 * identical.
 */
const from = z.object({
  known: z.record(z.string().check(z.regex(/^[0-9a-z]{11}$/)), wholeNumber(0, HIGHEST_COUNTER)),
  unread: z.optional(z.array(factIdText).check(z.maxLength(2000))),
  checks: z.optional(z.array(wholeNumber(0, 0xff_ff_ff_ff)).check(z.maxLength(20))),
});
export type ReportFrom = z.infer<typeof from>;

/** A report left the phone. Its content follows from the facts known then; sent does not mean arrived. */
export const reportSent = kind(
  'report-sent',
  z.object({
    letter: text(8),
    route: openEnum(ROUTES),
    files: z.array(shortText).check(z.maxLength(20)),
    to: z.array(shortText).check(z.maxLength(50)),
    made: made,
    /** Missing on the earliest reports: those were made from everything known when this was recorded. */
    from: z.optional(from),
  }),
);
