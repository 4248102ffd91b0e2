import type { Conflict } from '../../day/conflicts.ts';
import type { Day } from '../../day/model.ts';
import type { Matter } from '../../report/open-matters.ts';
import { conflictWords } from '../words/conflicts.ts';

/** What phones differ in, as open matters of the report. Takes numbered twice the report finds itself. */
export const conflictMatters = (day: Day, conflicts: readonly Conflict[]): Matter[] =>
  conflicts.flatMap((conflict) =>
    conflict.kind === 'take-twice' ? [] : [{ code: 'said-twice', text: conflictWords(day, conflict) }],
  );
