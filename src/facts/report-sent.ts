import * as z from 'zod/mini';
import { longText, shortText, text } from './envelope.ts';
import { kind } from './kind.ts';

/** How a report is made besides the day itself: kept with what was sent, so that it can be made again. */
const made = z.object({
  paper: z.enum(['a4', 'letter']),
  lines: z.enum(['take', 'track']),
  columns: z.array(text(40)).check(z.maxLength(60)),
  signature: longText,
  /** What was open besides what the day itself shows: a roll used on another day. */
  matters: z.array(shortText).check(z.maxLength(20)),
});
export type ReportMade = z.infer<typeof made>;

/**
 * A report left the phone. What it said follows from the facts that were known then; handed over does not mean arrived.
 */
export const reportSent = kind(
  'report-sent',
  z.object({
    letter: text(8),
    route: z.enum(['share', 'download', 'copy', 'mail']),
    files: z.array(shortText).check(z.maxLength(20)),
    to: z.array(shortText).check(z.maxLength(50)),
    made,
  }),
);
