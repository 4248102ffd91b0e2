import { counterOf, HIGHEST_COUNTER } from '../shared/ids.ts';
import type { Problem } from '../shared/result.ts';
import { type Fact, readFact } from './fact.ts';

/**
 * Why these facts could not be read back after storing; undefined if they can. Checked before success is
 * reported: what a reload rejects was never saved.
 */
export function unfitToKeep(facts: readonly Fact[]): Problem | undefined {
  for (const fact of facts) {
    if (counterOf(fact.id) > HIGHEST_COUNTER) return { code: 'day-full' };
    const read = readFact(fact);
    if (!read.ok) return { code: 'entry-unfit', kind: fact.kind, where: read.problem.where };
  }
  return undefined;
}
