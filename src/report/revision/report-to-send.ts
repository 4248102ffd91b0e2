import type { Day } from '../../day/model.ts';
import { dayWhenSent, latestSent, type SentReport, sentBeside } from '../../day/wrap/sent-reports.ts';
import type { ReportModel } from '../model.ts';
import { reportChanges } from './report-changes.ts';
import { FIRST_LETTER, type Revision, revisionOf } from './revision.ts';

/** Makes the report of a day, with what else is open. */
export type ModelOf = (day: Day, matters: readonly string[]) => ReportModel;

/** A report and what it is among those that went out. */
export interface ReportToSend {
  readonly model: ReportModel;
  readonly letter: string;
  /** Absent on the first that goes out, and when that one is sent again. */
  readonly revision: Revision | undefined;
  /** The report that went out with these very lines: this is that one once more. */
  readonly again: SentReport | undefined;
}

/**
 * The report of the day as it stands: the first, a revision of the latest sent, or, where nothing that is printed has
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

/** A report that went out, as it was, made from the facts that were known then. */
export function reportAgain(day: Day, sent: SentReport, modelOf: ModelOf): ReportToSend {
  const then = dayWhenSent(day, sent);
  const model = modelOf(then, sent.made.matters);
  return { ...lettered(then, sent.letter, model, modelOf), again: sent };
}

/** A report under a letter it already has: a revision of the one before that letter, if there is one. */
function lettered(day: Day, letter: string, model: ReportModel, modelOf: ModelOf) {
  const before = latestSent(day, letter);
  const revision = before && { ...revisionSince(day, before, model, modelOf), letter };
  return { model, letter, revision };
}

/**
 * What changed since a report went out. Where phones that did not know of each other sent several under its letter, it is
 * the latest of them, or else one that lacks something the latest had: whoever has that one is told as well.
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

/** The report and those that went out under its letter with other lines, each of them once, as it went out last. */
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
