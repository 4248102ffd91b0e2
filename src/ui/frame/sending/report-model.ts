import type { Day } from '../../../day/model.ts';
import { type Conflict, conflictsOf } from '../../../day/phones/conflicts.ts';
import type { Matter } from '../../../report/matter.ts';
import { reportOf } from '../../../report/model.ts';
import type { ModelOf } from '../../../report/revision/report-to-send.ts';
import { conflictWords } from '../../words/conflicts.ts';

/** The report of a day, with conflicts between phones and other open matters. */
export const modelOf: ModelOf = (day, matters, form) =>
  reportOf(
    day,
    [...conflictMatters(day, conflictsOf(day)), ...matters.map((text) => ({ code: 'said-open', text }))],
    form,
  );

/** Conflicts between phones, as open matters of the report. The report itself finds takes numbered twice. */
const conflictMatters = (day: Day, conflicts: readonly Conflict[]): Matter[] =>
  conflicts.flatMap((conflict) =>
    conflict.kind === 'take-twice' ? [] : [{ code: 'phones-differ', text: conflictWords(day, conflict) }],
  );
