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
  if (phone.database === own || !phone.last) return phone.entries > 0 ? entries : 'no entries yet';
  const heard = `last heard at ${clockTime(phone.last.at, phone.last.zone)}, ${entries}`;
  const lacks =
    phone.lacks > 0
      ? `had not seen ${countOf(phone.lacks, 'entry', 'entries')} of this phone`
      : 'had seen everything of this phone';
  const more =
    phone.hasMoreOf.length > 0
      ? `has entries of ${listOf(phone.hasMoreOf.map((other) => phoneName(day, other, own)))} that are not here`
      : '';
  return [heard, lacks, more].filter((words) => words !== '').join(' · ');
}
