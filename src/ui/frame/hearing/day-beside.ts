import type { DayStore } from '../../../app/day-store.ts';
import { rateNow } from '../../../day/settings/settings.ts';
import type { HeardBeside } from '../../words/hearing.ts';

/** What the timecode heard is held against. */
export function dayBeside({ day, clock }: DayStore): HeardBeside {
  const { atMs, zone } = clock.now();
  return {
    rate: rateNow(day.value),
    date: day.value.header.date,
    today: new Date(atMs + zone * 60_000).toISOString().slice(0, 10),
  };
}
