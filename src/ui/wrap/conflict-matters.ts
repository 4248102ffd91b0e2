import type { Conflict } from '../../day/conflicts.ts';
import type { Day, Fact } from '../../day/model.ts';
import type { Matter } from '../../report/open-matters.ts';
import { listOf } from '../words/chain.ts';
import { factWords } from '../words/facts.ts';

/** Contradictions between phones as open matters of the report. Takes numbered twice the report finds itself. */
export function conflictMatters(day: Day, conflicts: readonly Conflict[]): Matter[] {
  return conflicts.flatMap((conflict) => {
    if (conflict.kind !== 'said-twice') return [];
    const said = conflict.by.flatMap((id) => day.facts.find((fact: Fact) => fact.id === id) ?? []);
    return [
      {
        code: 'said-twice',
        link: conflict.link,
        text: `Two phones differ: ${listOf(said.map((fact) => factWords(day, fact)))}`,
      },
    ];
  });
}
