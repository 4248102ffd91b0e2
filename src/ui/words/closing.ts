import type { Day, Fact } from '../../day/model.ts';
import { holdersOf } from '../../day/phones/holders.ts';
import type { SentReport } from '../../day/wrap/sent-reports.ts';
import { type Closing, countSince, type LateOnLine, type Wrapped } from '../../day/wrap/since-closing.ts';
import { databaseOf } from '../../shared/ids.ts';
import { countOf } from './chain.ts';
import { clockTime } from './times.ts';

/** ` by Ana Brandt`, on every phone alike; where nobody said who holds it, on which phone. */
function byWhom(day: Day, { id }: Fact, own: string): string {
  if (!day.order) return '';
  const holder = holdersOf(day).get(databaseOf(id));
  const name = holder?.name || holder?.job;
  if (name) return ` by ${name}`;
  return databaseOf(id) === own ? ' on this phone' : ' on another phone';
}

/** `'Wrapped at 19:42 by Ana Brandt. Since then 2 entries were made, and 1 came in from a phone that had not heard.'` */
export function wrapWords(day: Day, wrap: Wrapped, own: string): string {
  const { after, unheard } = countSince(day, wrap);
  const made = after > 0 ? `${countOf(after, 'entry', 'entries')} ${after === 1 ? 'was' : 'were'} made` : '';
  const came = unheard > 0 ? `${unheard} came in from a phone that had not heard` : '';
  const since = [made, came].filter((words) => words !== '').join(', and ');
  return `Wrapped at ${clockTime(wrap.at, wrap.zone)}${byWhom(day, wrap, own)}.${since && ` Since then ${since}.`}`;
}

/** `'Report A sent at 19:50 by Ana Brandt: 3 changes since.'`; `changes` is null until they are counted. */
export function sentWords(day: Day, sent: SentReport, changes: number | null, own: string): string {
  const since =
    changes === null
      ? ''
      : changes === 0
        ? ': nothing in it has changed since'
        : `: ${countOf(changes, 'change')} since`;
  return `Report ${sent.letter} sent at ${clockTime(sent.at, sent.zone)}${byWhom(day, sent, own)}${since}.`;
}

/** What an entry of the line is late for; `came in` is what a phone said before it had heard. */
export function lateWords({ closing, isSaidAfter, isWhole }: LateOnLine): string {
  if (!isSaidAfter) return `${isWhole ? '' : 'change '}came in after ${closingName(closing)}`;
  return `${isWhole ? 'entered' : 'changed'} after ${closingName(closing)}`;
}

const closingName = (closing: Closing): string =>
  closing.kind === 'report-sent' ? `report ${closing.letter}` : 'wrap';
