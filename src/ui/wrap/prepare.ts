import type { OutgoingFile } from '../../app/sharing.ts';
import { conflictsOf } from '../../day/conflicts.ts';
import type { Day } from '../../day/model.ts';
import { dayWhenSent, type SentReport, sentReports } from '../../day/sent-reports.ts';
import type { ReportMade } from '../../facts/report-sent.ts';
import { reportCsv } from '../../report/csv.ts';
import type { CsvColumn } from '../../report/csv-columns.ts';
import type { Extras } from '../../report/extras.ts';
import { reportHtml } from '../../report/html.ts';
import { type ReportModel, reportOf } from '../../report/model.ts';
import { reportFileName } from '../../report/report-name.ts';
import { FIRST_LETTER, type Revision, revisionOf } from '../../report/revision.ts';
import { reportText } from '../../report/text.ts';
import { conflictMatters } from './conflict-matters.ts';
import { pageFonts } from './page-fonts.ts';
import type { Format } from './settings.ts';

/** A report ready to go out. */
export interface Prepared {
  readonly model: ReportModel;
  readonly letter: string;
  readonly revision: Revision | undefined;
  readonly text: string;
  readonly files: readonly OutgoingFile[];
  /** Characters that the font of the pages cannot draw. */
  readonly missing: readonly string[];
  /** Nothing changed since this report went out: it is that one again. */
  readonly again: SentReport | undefined;
}

/** The report of a day with what phones differ in, and what else is open. */
export const modelOf = (day: Day, matters: readonly string[] = []): ReportModel =>
  reportOf(day, [
    ...conflictMatters(day, conflictsOf(day)),
    ...matters.map((text) => ({ code: 'said-open', link: text, text })),
  ]);

const modelAsSent = (day: Day, sent: SentReport): ReportModel =>
  modelOf(dayWhenSent(day, sent), sent.made.matters);

/** The report of the day as it stands: the first, a revision of the one sent last, or that one again. */
export async function prepareReport(
  day: Day,
  made: ReportMade,
  formats: readonly Format[],
): Promise<Prepared> {
  const model = modelOf(day, made.matters);
  const last = sentReports(day).at(-1);
  if (!last) return filesOf(model, FIRST_LETTER, undefined, made, formats);
  const revision = revisionOf(model, { letter: last.letter, model: modelAsSent(day, last) });
  if (revision.changes.length > 0) return filesOf(model, revision.letter, revision, made, formats);
  return { ...(await prepareAgain(day, last, formats)), again: last };
}

/** A report that went out, made again byte for byte. */
export async function prepareAgain(
  day: Day,
  sent: SentReport,
  formats: readonly Format[],
): Promise<Prepared> {
  const then = dayWhenSent(day, sent);
  const model = modelOf(then, sent.made.matters);
  const before = sentReports(then).findLast(({ letter }) => letter !== sent.letter);
  const revision = before && revisionOf(model, { letter: before.letter, model: modelAsSent(then, before) });
  return filesOf(model, sent.letter, revision, sent.made, formats);
}

async function filesOf(
  model: ReportModel,
  letter: string,
  revision: Revision | undefined,
  made: ReportMade,
  formats: readonly Format[],
): Promise<Prepared> {
  const extras: Extras = { revision, signature: made.signature };
  const text = reportText(model, extras);
  const name = (ending: Format): string => reportFileName(model, ending, revision ? letter : '');
  const pdf = formats.includes('pdf') ? await pdfOf(model, made, extras) : undefined;
  const contents: Record<Format, () => Pick<OutgoingFile, 'type' | 'content'>> = {
    pdf: () => ({ type: 'application/pdf', content: pdf?.bytes ?? '' }),
    csv: () => ({ type: 'text/csv', content: csvOf(model, made, revision) }),
    txt: () => ({ type: 'text/plain', content: text }),
    html: () => ({ type: 'text/html', content: reportHtml(model, extras) }),
  };
  const files = formats.map((format) => ({ name: name(format), ...contents[format]() }));
  return { model, letter, revision, text, files, missing: pdf?.missing ?? [], again: undefined };
}

const csvOf = (model: ReportModel, { lines, columns }: ReportMade, revision: Revision | undefined): string =>
  reportCsv(model, { lines, columns: columns as CsvColumn[], byteOrderMark: true, revision });

/** The writer of pages comes when it is first wanted. */
async function pdfOf(model: ReportModel, { paper }: ReportMade, extras: Extras) {
  const [{ reportPdf }, fonts] = await Promise.all([import('../../report/pdf/report-pdf.ts'), pageFonts()]);
  return reportPdf(model, { fonts, paper, ...extras });
}
