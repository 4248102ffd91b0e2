import type { Day, FactId } from '../../day/model.ts';
import { holdersOf, type PhoneHolder } from '../../day/phones/holders.ts';
import { databaseOf } from '../../shared/ids.ts';

/** `'Jon Berg, boom operator'`, or whichever of the two is known. */
export const holderWords = ({ name, job }: PhoneHolder): string =>
  [name, name ? job.charAt(0).toLowerCase() + job.slice(1) : job].filter((word) => word !== '').join(', ');

/** Whose phone a database is: `'this phone'`, its holder's name, or `'another phone'`. */
export function phoneName(day: Day, database: string, own: string): string {
  if (database === own) return 'this phone';
  const holder = holdersOf(day).get(database);
  return holder?.name || holder?.job || 'another phone';
}

/** Whose entry it is, on a day of several phones; otherwise nothing. `own` is this phone's database. */
export const whose = (day: Day, id: FactId, own: string): string =>
  day.order ? phoneName(day, databaseOf(id), own) : '';

/** Who made an entry on another phone; nothing for one's own, and where nobody said who holds that phone. */
export function otherHolder(day: Day, id: FactId, own: string): string {
  const database = databaseOf(id);
  const holder = database === own ? undefined : holdersOf(day).get(database);
  return holder?.name || holder?.job || '';
}
