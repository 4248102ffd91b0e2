import { safeName } from '../../day/files/safe-name.ts';
import type { ReportModel } from '../model.ts';

/** The file types of a report, in the order offered, with their media types. */
export const REPORT_TYPES = {
  pdf: 'application/pdf',
  csv: 'text/csv',
  txt: 'text/plain',
  html: 'text/html',
} as const;

export type ReportFormat = keyof typeof REPORT_TYPES;
export const REPORT_FORMATS = Object.keys(REPORT_TYPES) as ReportFormat[];

/** `'Salt Road day 7'`; what the report is about, if it has a name. */
export const reportSubject = ({ head }: ReportModel): string =>
  [head.production, head.label || head.date].filter(Boolean).join(' ');

/**
 * A safe file name for a sent report: `'Salt Road day 7 sound report B.pdf'`; `letter` is the revision's, if
 * any.
 */
export const reportFileName = (model: ReportModel, ending: ReportFormat | 'eml', letter = ''): string => {
  // The part that distinguishes days must survive when a long title is cut.
  const title = [...reportSubject(model)].slice(0, 60).join('');
  return safeName([title, 'sound report', letter].filter(Boolean).join(' '), ending);
};
