import type { Day } from '../../day/model.ts';
import type { DayPhone } from '../../day/phones/phones-of-day.ts';
import { countOf, listOf } from '../words/chain.ts';
import { holderWords, phoneName } from '../words/phones.ts';
import { clockTime } from '../words/times.ts';

/** Who holds it; this phone says so of itself. */
export function titleOfPhone({ database, holder }: DayPhone, own: string): string {
  const held = holder && holderWords(holder);
  if (database === own) return held ? `This phone: ${held}` : 'This phone';
  return held || 'Another phone';
}

/** `'last heard at 14:02, 31 entries · lacks 3 entries of this phone'` */
export function statusOfPhone(day: Day, phone: DayPhone, own: string): string {
  const entries = countOf(phone.entries, 'entry', 'entries');
  const more = moreWords(day, phone, own);
  if (phone.database === own) return phone.entries > 0 ? entries : 'no entries yet';
  if (!phone.last) return more;
  const heard = `last heard at ${clockTime(phone.last.at, phone.last.zone)}, ${entries}`;
  const lacks =
    phone.lacks > 0
      ? `had not seen ${countOf(phone.lacks, 'entry', 'entries')} of this phone`
      : 'had seen everything of this phone';
  return [heard, lacks, more].filter((words) => words !== '').join(' · ');
}

/** `'has entries of its own and of Jon Berg that are not here'`; how many is not known before they are. */
function moreWords(day: Day, { database, hasMoreOf }: DayPhone, own: string): string {
  if (hasMoreOf.length === 0) return '';
  const others = hasMoreOf.filter((other) => other !== database);
  if (others.length === 0) return 'has entries that are not here';
  const of = others.map((other) => `of ${phoneName(day, other, own)}`);
  return `has entries ${listOf([...(others.length < hasMoreOf.length ? ['of its own'] : []), ...of])} that are not here`;
}
