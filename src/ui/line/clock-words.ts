import type { Day } from '../../day/model.ts';
import type { ClockEvidence } from '../../day/phone-clocks.ts';
import type { ClockRemark } from '../../day/phones/clock-remarks.ts';
import { holdersOf } from '../../day/phones/holders.ts';
import { clockTime } from '../words/times.ts';

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

const BY: Record<ClockEvidence, string> = {
  timecode: 'by the timecode both are synced to',
  take: 'by a take both logged',
  exchange: 'by what each knew when',
  none: '',
};

/** Other phones' clocks that are off by seconds or more, corrected on the line; empty if none are. */
export const phoneClockWords = (day: Day): string[] =>
  [...(day.order?.clocks ?? [])]
    .filter(([, { offset }]) => Math.abs(offset) >= 1000)
    .map(([database, { offset, how }]) => {
      const name = holdersOf(day).get(database)?.name;
      const clock = name ? `The clock of ${name}'s phone` : "Another phone's clock";
      const way = offset > 0 ? 'behind' : 'ahead of';
      return `${clock} is ${spanWords(Math.abs(offset))} ${way} the first; its entries are placed ${BY[how]}`;
    });

const spanWords = (ms: number): string =>
  ms < 90_000 ? `${Math.round(ms / 1000)} s` : `${Math.round(ms / 60_000)} min`;
