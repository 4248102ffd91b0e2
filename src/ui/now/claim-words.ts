import type { ChainAnswers } from '../../day/answers/answering.ts';
import { allRecorded } from '../../day/answers/summary.ts';

/** What needs no attention, only as far as it was checked. */
export function claimWords({ summary, voices }: Pick<ChainAnswers, 'summary' | 'voices'>): string {
  const claims = [summary.clashes === 0 && 'no clash', allRecorded(voices) && 'everyone recorded'];
  const said = claims.filter(Boolean).join(', ');
  return said && ` · ${said}`;
}
