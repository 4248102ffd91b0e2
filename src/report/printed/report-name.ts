import { safeName } from '../../day/files/safe-name.ts';
import { SECOND_FORM } from '../form.ts';
import type { ReportModel } from '../model.ts';

/** The formats of a report, in the order offered, with their media types. */
export const REPORT_TYPES = {
  pdf: 'application/pdf',
  csv: 'text/csv',
  plain: 'text/csv',
  otio: 'application/json',
  txt: 'text/plain',
  html: 'text/html',
} as const;

export type ReportFormat = keyof typeof REPORT_TYPES;
export const REPORT_FORMATS = Object.keys(REPORT_TYPES) as ReportFormat[];

/** `'Salt Road day 7'`; what the report is about, if it has a name. */
export const reportSubject = ({ head }: ReportModel): string =>
  [head.production, head.label || head.date].filter(Boolean).join(' ');

/** What tells the files of one report apart beside their ending. */
const MARKS: Partial<Record<ReportFile, string>> = { csv: 'own columns', changes: 'changes' };

/** In the first two forms the table of chosen columns was the usual one. */
const SECOND_FORM_MARKS: typeof MARKS = { plain: 'import table', changes: 'changes' };

/** A file of a report: in one of its formats, what a revision changed, or the mail with all of them. */
export type ReportFile = ReportFormat | 'changes' | 'eml';

const endingOf = (file: ReportFile): string => (file === 'plain' || file === 'changes' ? 'csv' : file);

/**
 * A safe file name for a sent report: `'Salt Road day 7 sound report B.pdf'`; `letter` is the revision's, if
 * any.
 */
export const reportFileName = (model: ReportModel, file: ReportFile, letter = ''): string => {
  // The part that distinguishes days must survive when a long title is cut.
  const title = [...reportSubject(model)].slice(0, 60).join('');
  const marks = model.form > SECOND_FORM ? MARKS : SECOND_FORM_MARKS;
  const name = [title, 'sound report', letter, marks[file]].filter(Boolean).join(' ');
  return safeName(name, endingOf(file));
};
