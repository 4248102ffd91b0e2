import type { ClockRemark } from '../../day/clock-remarks.ts';
import type { Day } from '../../day/model.ts';
import { clockTime } from './times.ts';

/** `zoneName(-210)` is `'UTC-3:30'`. */
export function zoneName(minutes: number): string {
  const all = Math.abs(minutes);
  const rest = all % 60;
  return `UTC${minutes < 0 ? '-' : '+'}${Math.floor(all / 60)}${rest ? `:${String(rest).padStart(2, '0')}` : ''}`;
}

/** What happened to the phone's clock, in one line. */
export function clockWords(day: Day, remark: ClockRemark): string {
  const fact = day.facts.find(({ id }) => id === remark.by)!;
  const when = clockTime(fact.at, fact.zone);
  return remark.kind !== 'zone-changed'
    ? `The phone's clock was set ${remark.kind === 'set-back' ? 'back' : 'ahead'} ${Math.round(remark.ms / 60_000)} min before ${when}`
    : `The phone's zone went from ${zoneName(remark.from)} to ${zoneName(remark.to)} before ${when}`;
}
