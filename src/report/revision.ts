import { setupLetters, setupOf } from '../day/slate.ts';
import { type Change, changeText } from './change.ts';
import type { ReportModel } from './model.ts';
import { reportChanges } from './report-changes.ts';

/** What makes a report a revision of one that went out before. */
export interface Revision {
  /** `'B'`, `'C'` and so on; I and O are left out, as on slates. */
  readonly letter: string;
  /** The letter of the report it is compared with. */
  readonly since: string;
  readonly changes: readonly Change[];
}

/** The letter of the first report that goes out. */
export const FIRST_LETTER = 'A';

/** `nextLetter('A')` is `'B'`, `nextLetter('H')` is `'J'`, `nextLetter('Z')` is `'AA'`. */
export const nextLetter = (letter: string): string => setupLetters((setupOf(letter) ?? 0) + 1);

/** The report as it is now, as a revision of the one sent last. */
export const revisionOf = (
  now: ReportModel,
  sent: { readonly letter: string; readonly model: ReportModel },
): Revision => ({
  letter: nextLetter(sent.letter),
  since: sent.letter,
  changes: reportChanges(sent.model, now),
});

/** The sentences at the head of a revision. */
export const revisionLines = ({ changes }: Revision): string[] =>
  changes.length > 0 ? changes.map(changeText) : ['Nothing that is printed here.'];

/** `'Changed since revision A'`. */
export const revisionTitle = ({ since }: Revision): string => `Changed since revision ${since}`;
