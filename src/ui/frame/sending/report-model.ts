import type { Day } from '../../../day/model.ts';
import { type Conflict, conflictsOf } from '../../../day/phones/conflicts.ts';
import { reportOf } from '../../../report/model.ts';
import type { Matter } from '../../../report/open-matters.ts';
import type { ModelOf } from '../../../report/revision/report-to-send.ts';
import { conflictWords } from '../../words/conflicts.ts';

/** The report of a day with what phones differ in, and what else is open. */
export const modelOf: ModelOf = (day, matters) =>
  reportOf(day, [
    ...conflictMatters(day, conflictsOf(day)),
    ...matters.map((text) => ({ code: 'said-open', text })),
  ]);

/** What phones differ in, as open matters of the report. Takes numbered twice the report finds itself. */
const conflictMatters = (day: Day, conflicts: readonly Conflict[]): Matter[] =>
  conflicts.flatMap((conflict) =>
    conflict.kind === 'take-twice' ? [] : [{ code: 'phones-differ', text: conflictWords(day, conflict) }],
  );
