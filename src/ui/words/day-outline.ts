import type { DayOutline } from '../../app/ports.ts';
import type { Promised } from '../../app/safekeeping.ts';
import { clockTime } from './times.ts';

export const titleOf = (day: Pick<DayOutline, 'sample' | 'production' | 'label'>): string =>
  [day.sample ? 'Sample' : '', day.production, day.label].filter(Boolean).join(' · ') || 'Untitled day';

/** Whether a copy of the day has left the phone, and whether it is still complete. */
export function copyWords({ copiedAt, copiedFacts, facts, sample }: DayOutline): string {
  if (sample) return 'practice day';
  if (copiedAt === undefined) return 'not backed up';
  const at = clockTime(copiedAt, -new Date(copiedAt).getTimezoneOffset());
  return copiedFacts === facts ? `backed up ${at}` : `changed since backup ${at}`;
}

export const PROMISED_WORDS: Record<Promised, string> = {
  'not-asked': 'After the first take, the browser is asked to keep the data.',
  promised: 'The browser has promised not to clear the data by itself.',
  'not-promised': 'The browser may clear the data when the phone is full: keep a backup elsewhere.',
  'cannot-ask': 'This browser may clear the data when the phone is full: keep a backup elsewhere.',
};
