import { type FollowedClock, timecodeAt, timeOfDayClock } from '../time/followed-clock.ts';
import { framesBetween, framesToMs } from '../time/timecode.ts';
import type { Day, Fact, Stamp, Take } from './model.ts';

const HOUR_MS = 3_600_000;

/**
 * When a take rolled, in UTC ms: by the tap, else by its start on the followed clock, else when it was
 * logged. A take of 09:40 typed at 14:00 counts as 09:40.
 */
export function takenAtMs(day: Day, take: Take): number {
  if (take.rolledAt !== undefined) return take.rolledAt;
  const said = day.takeItems.get(take.id)?.fact;
  if (!said) return 0;
  return (take.start && startMs(day, take.start, said)) ?? said.at;
}

function startMs(day: Day, start: Stamp, said: Fact): number | undefined {
  if (day.clock) return lastShownMs(day.clock, start, said.at);
  const atMs = lastShownMs(timeOfDayClock(said.at, said.zone, start.rate), start, said.at);
  // With no clock followed, a start before the day began shows that the timecode is not time of day.
  const began = Math.min(day.upkeep.shift.callAtMs ?? said.at, day.facts[0]?.at ?? said.at);
  return atMs !== undefined && atMs >= began ? atMs : undefined;
}

/** The last moment before a take was logged when the clock, perhaps slightly ahead, showed its start. */
function lastShownMs(clock: FollowedClock, { frames, rate }: Stamp, saidMs: number): number | undefined {
  if (clock.rate !== rate) return undefined;
  const by = saidMs + HOUR_MS;
  return by - framesToMs(framesBetween(frames, timecodeAt(clock, by), rate), rate);
}
