import type { ChainAnswers } from '../../day/answers/answering.ts';
import { allRecorded } from '../../day/answers/summary.ts';

/** What needs no attention, only as far as it was checked; a muted voice is recorded by nobody. */
export function claimWords({ summary, voices }: Pick<ChainAnswers, 'summary' | 'voices'>): string {
  if (summary.clashes > 0) return '';
  if (!allRecorded(voices)) return ' · no clash';
  return summary.muted > 0 ? ' · everyone else recorded' : ' · everyone recorded';
}
