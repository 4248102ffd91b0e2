import type { ChainAnswers } from '../../day/answers/answering.ts';
import { allRecorded } from '../../day/answers/summary.ts';

/** What nobody has to look after, said only of what was looked at. */
export function claimWords({ summary, voices }: Pick<ChainAnswers, 'summary' | 'voices'>): string {
  const claims = [summary.clashes === 0 && 'no clash', allRecorded(voices) && 'nobody unrecorded'];
  const said = claims.filter(Boolean).join(', ');
  return said && ` · ${said}`;
}
