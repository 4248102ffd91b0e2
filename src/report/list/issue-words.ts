import { type Extras, momentText } from '../revision/revision.ts';

/** What tells one issue of a report from another: `'Sound report A'`, `'Sound report, revision B'`. */
export const issueName = ({ letter = '', revision }: Extras): string =>
  revision ? `Sound report, revision ${revision.letter}` : `Sound report ${letter}`.trim();

/** With its time, by the clock of the phone it was made on: `'Sound report A, 2026-10-07 18:05'`. */
export const issueTitle = (extras: Extras): string =>
  [issueName(extras), ...(extras.issued ? [momentText(extras.issued)] : [])].join(', ');
