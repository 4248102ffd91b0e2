import { type FollowedClock, timecodeAt, timeOfDayClock } from '../time/followed-clock.ts';
import { framesBetween, framesToMs } from '../time/timecode.ts';
import { EMPTY_HEADER } from './header.ts';
import type { Day, Fact, Stamp, Take } from './model.ts';

const HOUR_MS = 3_600_000;

/**
 * When a take rolled, in UTC ms: by the tap, else by its start on the followed clock, else when it was logged. So a take of
 * 09:40 that is typed at 14:00 is one of the morning.
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
  // With no clock followed, a start before the day was begun tells that the timecode is not time of day.
  const began = Math.min(day.upkeep.shift.callAtMs ?? said.at, day.facts[0]?.at ?? said.at);
  return atMs !== undefined && atMs >= began ? atMs : undefined;
}

/** The last moment before a take was logged at which the clock showed its start; a clock may be a little ahead. */
function lastShownMs(clock: FollowedClock, { frames, rate }: Stamp, saidMs: number): number | undefined {
  if (clock.rate !== rate) return undefined;
  const by = saidMs + HOUR_MS;
  return by - framesToMs(framesBetween(frames, timecodeAt(clock, by), rate), rate);
}

/** How the recorder writes a sample. */
export type SampleFormat = Pick<Day['header'], 'sampleRate' | 'bitDepth'>;

/**
 * What was said of the recorder's samples by a moment. The head of the report has one value for the whole day; what is already
 * on a card was written in what held then, so a change at noon does not count the morning anew.
 */
export function sampleFormats(day: Day): (atMs: number) => SampleFormat {
  const said = day.facts.flatMap((fact) =>
    fact.kind === 'day-described' && !day.takenBack.has(fact.id) ? [{ at: fact.at, ...fact.fields }] : [],
  );
  return (atMs) => {
    const by = said.filter(({ at }) => at <= atMs);
    return {
      sampleRate: by.findLast(({ sampleRate }) => sampleRate)?.sampleRate ?? EMPTY_HEADER.sampleRate,
      bitDepth: by.findLast(({ bitDepth }) => bitDepth)?.bitDepth ?? EMPTY_HEADER.bitDepth,
    };
  };
}
