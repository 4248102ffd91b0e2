import { safeName } from '../../day/files/safe-name.ts';
import type { ReportModel } from '../model.ts';

/** The files that a report can go out as, in the order in which they are offered, and what each is to other apps. */
export const REPORT_TYPES = {
  pdf: 'application/pdf',
  csv: 'text/csv',
  txt: 'text/plain',
  html: 'text/html',
} as const;

export type ReportFormat = keyof typeof REPORT_TYPES;
export const REPORT_FORMATS = Object.keys(REPORT_TYPES) as ReportFormat[];

/** `'Salt Road day 7'`; what the report is about, where it has a name at all. */
export const reportSubject = ({ head }: ReportModel): string =>
  [head.production, head.label || head.date].filter(Boolean).join(' ');

/** A safe file name for a sent report: `'Salt Road day 7 sound report B.pdf'`; `letter` is the revision's, if it is one. */
export const reportFileName = (model: ReportModel, ending: ReportFormat | 'eml', letter = ''): string => {
  // The part that tells one day from another must survive where a long title is cut.
  const title = [...reportSubject(model)].slice(0, 60).join('');
  return safeName([title, 'sound report', letter].filter(Boolean).join(' '), ending);
};
