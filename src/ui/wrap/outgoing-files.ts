import { PAPERS, type ReportMade, TABLE_LINES } from '../../app/commands/report.ts';
import type { OutgoingFile } from '../../app/sharing.ts';
import { reportCsv } from '../../report/formats/csv.ts';
import type { CsvColumn } from '../../report/formats/csv-columns.ts';
import { reportHtml } from '../../report/formats/html.ts';
import { reportText } from '../../report/formats/text.ts';
import { REPORT_TYPES, type ReportFormat, reportFileName } from '../../report/printed/report-name.ts';
import type { ReportToSend } from '../../report/revision/report-to-send.ts';
import type { Extras } from '../../report/revision/revision.ts';
import { isOneOf } from '../../shared/open-word.ts';
import { writePages } from '../frame/sending/pages.ts';

export interface MadeFiles {
  readonly files: readonly OutgoingFile[];
  /** Characters missing from the pages' font. */
  readonly missing: readonly string[];
  /** Why the requested pages are missing: their writer or a font is not on this phone. */
  readonly noPages: string | null;
}

const extrasOf = ({ revision }: ReportToSend, { signature }: ReportMade): Extras => ({ revision, signature });

export const outgoingText = (report: ReportToSend, made: ReportMade): string =>
  reportText(report.model, extrasOf(report, made));

/** The file name for this report. */
export const outgoingName = (
  { model, letter, revision }: ReportToSend,
  ending: ReportFormat | 'eml',
): string => reportFileName(model, ending, revision ? letter : '');

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
    csv: () => tableOf(report, made),
    txt: () => outgoingText(report, made),
    html: () => reportHtml(report.model, extrasOf(report, made)),
  };
  const files = formats.flatMap((format): OutgoingFile[] => {
    const content = contents[format]();
    return content === null
      ? []
      : [{ name: outgoingName(report, format), type: REPORT_TYPES[format], content }];
  });
  return {
    files,
    missing: pages?.ok ? pages.value.missing : [],
    noPages: pages && !pages.ok ? pages.problem.because : null,
  };
}

const tableOf = ({ model, revision }: ReportToSend, { lines, columns }: ReportMade): string | null =>
  isOneOf(TABLE_LINES, lines)
    ? reportCsv(model, { lines, columns: columns as CsvColumn[], byteOrderMark: true, revision })
    : null;
