import type { Day } from '../../day/model.ts';
import { dayWhenSent, latestSent, type SentReport, sentBeside } from '../../day/wrap/sent-reports.ts';
import { formSent } from '../form.ts';
import type { ReportModel } from '../model.ts';
import { reportChanges } from './report-changes.ts';
import { FIRST_LETTER, type Revision, revisionOf } from './revision.ts';

/** Makes the report of a day, including other open matters; in a sent report's form, or the newest. */
export type ModelOf = (day: Day, matters: readonly string[], form?: number) => ReportModel;

/** A report and its place among those already sent. */
export interface ReportToSend {
  readonly model: ReportModel;
  readonly letter: string;
  /** Missing for the first report, and when that one is sent again. */
  readonly revision: Revision | undefined;
  /** The sent report with exactly these lines: this one repeats it. */
  readonly again: SentReport | undefined;
}

/**
 * The report of the day as it stands: the first, a revision of the latest sent, or, if nothing printed has
 * changed, the latest with its letter. Paper, columns and signature may differ from that one.
 */
export function reportToSend(day: Day, matters: readonly string[], modelOf: ModelOf): ReportToSend {
  const model = modelOf(day, matters);
  const last = latestSent(day);
  if (!last) return { model, letter: FIRST_LETTER, revision: undefined, again: undefined };
  const revision = revisionSince(day, last, model, modelOf);
  if (revision.changes.length > 0) return { model, letter: revision.letter, revision, again: undefined };
  return { ...lettered(day, last.letter, model, modelOf), again: last };
}

/** A report as it was sent, from the facts known then and in the form it had. */
export function reportAgain(day: Day, sent: SentReport, modelOf: ModelOf): ReportToSend {
  const then = dayWhenSent(day, sent);
  const form = formSent(sent.made);
  const asThen: ModelOf = (known, matters) => modelOf(known, matters, form);
  const model = asThen(then, sent.made.matters);
  return { ...lettered(then, sent.letter, model, asThen), again: sent };
}

/** A report with its existing letter: a revision of the one before that letter, if any. */
function lettered(day: Day, letter: string, model: ReportModel, modelOf: ModelOf) {
  const before = latestSent(day, letter);
  const revision = before && { ...revisionSince(day, before, model, modelOf), letter };
  return { model, letter, revision };
}

/**
 * What changed since a report was sent. If phones that did not know of each other sent several under its
 * letter, it is the latest of them, or else one that lacks something the latest had, so that whoever has that
 * one is told too.
 */
function revisionSince(day: Day, sent: SentReport, model: ReportModel, modelOf: ModelOf): Revision {
  const all = differentReports(day, sent, modelOf);
  const revisions = all.map((report) => ({ report, revision: revisionOf(model, report) }));
  const { report, revision } = revisions.find((one) => one.revision.changes.length > 0) ?? revisions[0]!;
  if (all.length === 1) return revision;
  const others = all.filter((one) => one !== report).map(({ sent: other }) => other);
  return { ...revision, beside: { compared: report.sent, others } };
}

interface Made {
  readonly letter: string;
  readonly sent: SentReport;
  readonly model: ReportModel;
}

/** The report and others sent under its letter with different lines, each once, as last sent. */
function differentReports(day: Day, sent: SentReport, modelOf: ModelOf): Made[] {
  const made = (one: SentReport): Made => ({
    letter: one.letter,
    sent: one,
    model: modelOf(dayWhenSent(day, one), one.made.matters),
  });
  const all = [made(sent)];
  for (const other of sentBeside(day, sent).map(made))
    if (all.every(({ model }) => reportChanges(model, other.model).length > 0)) all.push(other);
  return all;
}
