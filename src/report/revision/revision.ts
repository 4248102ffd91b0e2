import { setupLetters, setupOf } from '../../day/slate.ts';
import type { SentReport } from '../../day/wrap/sent-reports.ts';
import type { ReportModel } from '../model.ts';
import { type Change, changeText } from './change.ts';
import { reportChanges } from './report-changes.ts';

/** What makes a report a revision of an earlier one. */
export interface Revision {
  /** `'B'`, `'C'` and so on; I and O are left out, as on slates. */
  readonly letter: string;
  /** The letter of the report it is compared with. */
  readonly since: string;
  readonly changes: readonly Change[];
  /** The report it is compared with, and others two phones sent under its letter with different lines. */
  readonly beside?: { readonly compared: Sending; readonly others: readonly Sending[] };
}

/** When and in which time zone a report was sent. */
export type Sending = Pick<SentReport, 'at' | 'zone'>;

/** The letter of the first report that goes out. */
export const FIRST_LETTER = 'A';

/** `nextLetter('A')` is `'B'`, `nextLetter('H')` is `'J'`, `nextLetter('Z')` is `'AA'`. */
export const nextLetter = (letter: string): string => setupLetters((setupOf(letter) ?? 0) + 1);

export const revisionOf = (
  now: ReportModel,
  sent: { readonly letter: string; readonly model: ReportModel },
): Revision => ({
  letter: nextLetter(sent.letter),
  since: sent.letter,
  changes: reportChanges(sent.model, now),
});

/** The sentences at the head of a revision. */
export function revisionLines(revision: Revision): string[] {
  const { changes } = revision;
  const beside = besideText(revision);
  const changed = changes.length > 0 ? changes.map(changeText) : ['Nothing that is printed here.'];
  return beside ? [beside, ...changed] : changed;
}

/** Says that several reports have the letter it is compared with; empty otherwise. */
export function besideText({ since, beside }: Revision): string {
  if (!beside) return '';
  const { compared, others } = beside;
  const times = [...others, compared].sort((a, b) => a.at - b.at).map(momentText);
  const all = `at ${times.slice(0, -1).join(', at ')} and at ${times.at(-1)}`;
  const [count, from] = times.length === 2 ? ['Two', 'two phones'] : [String(times.length), 'several phones'];
  const day = momentText(compared).slice(0, DATE_LENGTH);
  const isOneDay = times.every((time) => time.startsWith(day));
  const which = momentText(compared).slice(isOneDay ? DATE_LENGTH + 1 : 0);
  return `${count} different reports ${since} went out, from ${from}: ${all}. This is compared with the one of ${which}.`;
}

const DATE_LENGTH = 10;

/** `'2026-10-07 18:05'`, by the sender's clock. */
export const momentText = ({ at, zone }: Sending): string =>
  new Date(at + zone * 60_000).toISOString().slice(0, 16).replace('T', ' ');

/** `'Changed since revision A'`. */
export const revisionTitle = ({ since }: Revision): string => `Changed since revision ${since}`;

/** What a report may contain besides the day itself. */
export interface Extras {
  /** Missing on the first report. */
  readonly revision?: Revision | undefined;
  /** The report's own letter; from the third form on it is printed. */
  readonly letter?: string | undefined;
  /** When it was made, and in which time zone; from the third form on it is printed. */
  readonly issued?: Sending | undefined;
  /** A line under the report, in the mixer's words. */
  readonly signature?: string | undefined;
}
