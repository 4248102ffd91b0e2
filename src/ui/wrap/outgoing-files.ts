import { PAPERS, type ReportMade, TABLE_LINES } from '../../app/commands/report.ts';
import type { OutgoingFile } from '../../app/sharing.ts';
import { FIRST_FORM, SECOND_FORM } from '../../report/form.ts';
import { changesCsv, reportCsv } from '../../report/formats/csv.ts';
import type { CsvColumn, CsvGuard } from '../../report/formats/csv-columns.ts';
import { reportHtml } from '../../report/formats/html.ts';
import { importTable } from '../../report/formats/import-table.ts';
import { reportOtio } from '../../report/formats/otio.ts';
import { reportText } from '../../report/formats/text.ts';
import {
  REPORT_TYPES,
  type ReportFile,
  type ReportFormat,
  reportFileName,
} from '../../report/printed/report-name.ts';
import type { ReportToSend } from '../../report/revision/report-to-send.ts';
import type { Extras } from '../../report/revision/revision.ts';
import { isOneOf } from '../../shared/open-word.ts';
import { writePages } from '../frame/sending/pages.ts';

/** A file with what it is called on a button. */
export interface MadeFile extends OutgoingFile {
  readonly what: string;
}

const WHAT: Record<ReportFormat, string> = {
  pdf: 'pdf',
  csv: 'csv, own columns',
  plain: 'csv',
  otio: 'otio',
  txt: 'txt',
  html: 'html',
};

export interface MadeFiles {
  readonly files: readonly MadeFile[];
  /** Characters that the pages cannot draw. The web page, which has them, is then among the files. */
  readonly missing: readonly string[];
  /** Why the requested pages are missing: their writer or a font is not on this phone. */
  readonly noPages: string | null;
}

const extrasOf = ({ revision, letter }: ReportToSend, { signature, issued }: ReportMade): Extras => ({
  revision,
  letter,
  signature,
  issued,
});

export const outgoingText = (report: ReportToSend, made: ReportMade): string =>
  reportText(report.model, extrasOf(report, made));

/** The file name for this report. */
export const outgoingName = ({ model, letter, revision }: ReportToSend, file: ReportFile): string =>
  reportFileName(model, file, revision || model.form > SECOND_FORM ? letter : '');

/** Makes the requested files. The others still go out if the pages cannot be made, or `stop` ended them. */
export async function makeFiles(
  report: ReportToSend,
  made: ReportMade,
  formats: readonly ReportFormat[],
  stop?: AbortSignal,
): Promise<MadeFiles> {
  // A paper size that only a newer version knows cannot be laid out here.
  const { paper } = made;
  const asked = { what: 'report', model: report.model, ...extrasOf(report, made) } as const;
  const pages =
    formats.includes('pdf') && isOneOf(PAPERS, paper) ? await writePages({ ...asked, paper }, stop) : null;
  const contents: Record<ReportFormat, () => OutgoingFile['content'] | null> = {
    pdf: () => (pages?.ok ? pages.value.bytes : null),
    csv: () => tableOf(report, made, 'formulas'),
    // The first two forms had the chosen columns here too.
    plain: () =>
      report.model.form > SECOND_FORM ? importTable(report.model) : tableOf(report, made, 'none'),
    otio: () => reportOtio(report.model),
    txt: () => outgoingText(report, made),
    html: () => reportHtml(report.model, extrasOf(report, made)),
  };
  const missing = pages?.ok ? pages.value.missing : [];
  const files = withWebPage(formats, report, missing).flatMap((format): MadeFile[] => {
    const content = contents[format]();
    return content === null
      ? []
      : [{ what: WHAT[format], name: outgoingName(report, format), type: REPORT_TYPES[format], content }];
  });
  return {
    files: [...files, ...changesOf(report, files)],
    missing,
    noPages: pages && !pages.ok ? pages.problem.because : null,
  };
}

/** Names that the pages cannot draw must not get lost: the web page goes along. */
const withWebPage = (
  formats: readonly ReportFormat[],
  { model }: ReportToSend,
  missing: readonly string[],
): readonly ReportFormat[] =>
  missing.length === 0 || model.form <= SECOND_FORM || formats.includes('html')
    ? formats
    : [...formats, 'html'];

const tableOf = (
  { model, revision }: ReportToSend,
  { lines, columns }: ReportMade,
  guard: CsvGuard,
): string | null =>
  isOneOf(TABLE_LINES, lines)
    ? reportCsv(model, {
        ...{ lines, columns: columns as CsvColumn[], revision, guard },
        // Importing programs take the mark for a part of the first title.
        byteOrderMark: guard === 'formulas',
      })
    : null;

/** A table beside which what changed goes out as a file of its own: the table is always the same table. */
function changesOf(report: ReportToSend, files: readonly MadeFile[]): MadeFile[] {
  const { model, revision } = report;
  const hasTable = files.some(({ type }) => type === REPORT_TYPES.csv);
  if (!revision || !hasTable || model.form === FIRST_FORM) return [];
  const name = outgoingName(report, 'changes');
  return [{ what: 'changes', name, type: REPORT_TYPES.csv, content: changesCsv(revision, true) }];
}
