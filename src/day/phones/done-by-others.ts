import { databaseOf } from '../../shared/ids.ts';
import type { Day, Fact } from '../model.ts';

/** What a plan's moves are recorded as. */
const MOVES: ReadonlySet<Fact['kind']> = new Set<Fact['kind']>([
  'transmitter-worn',
  'channels-tuned',
  'leads-plugged',
  'selectors-thrown',
  'inputs-sent',
  'mute-set',
]);

/** The moves that other phones have done since the last take, in the order of the line: those are off the list. */
export function doneByOthers(day: Day, own: string): Fact[] {
  const last = day.line.findLastIndex(({ fact, takenBack }) => fact.kind === 'take-logged' && !takenBack);
  return day.line
    .slice(last + 1)
    .filter(({ fact, takenBack }) => MOVES.has(fact.kind) && !takenBack && databaseOf(fact.id) !== own)
    .map(({ fact }) => fact);
}
