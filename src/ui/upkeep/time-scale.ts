import type { Day } from '../../day/model.ts';
import type { Shift } from '../../upkeep/due/batteries.ts';
import { shiftOf, type UpkeepNow } from '../../upkeep/due/day-due.ts';

export type MarkName = 'meal' | 'wrap';

export interface TimeMark {
  readonly name: MarkName;
  readonly atMs: number;
  /** Its place along the scale, 0 to 1. */
  readonly share: number;
}

/** Time from now to the right: one scale for all bars of a screen, so that they can be compared. */
export interface TimeScale {
  readonly nowMs: number;
  readonly endMs: number;
  /** Meal break and wrap, if they are ahead, in order of time. */
  readonly marks: readonly TimeMark[];
}

/** Room behind wrap, so that a bar that passes it can be seen to pass it. */
const ROOM = 1.2;
const LONGEST_MS = 24 * 3_600_000;

/**
 * A scale from now to a little past wrap, where the day ends; without a wrap, to the last of the bars' ends.
 * Example: at 07:00 with wrap at 17:00 it ends at 19:00, and 12:00 is at 5/12.
 */
export function timeScale(
  nowMs: number,
  { mealAtMs, wrapAtMs }: Pick<Shift, 'mealAtMs' | 'wrapAtMs'>,
  endsMs: readonly number[],
): TimeScale {
  const ahead = (['meal', 'wrap'] as const).flatMap((name) => {
    const atMs = name === 'meal' ? mealAtMs : wrapAtMs;
    return atMs !== undefined && atMs > nowMs ? [{ name, atMs }] : [];
  });
  const wrap = ahead.find(({ name }) => name === 'wrap');
  const lastMs = wrap?.atMs ?? Math.max(nowMs, ...ahead.map(({ atMs }) => atMs), ...endsMs);
  const spanMs = Math.min(LONGEST_MS, Math.max(60_000, lastMs - nowMs)) * ROOM;
  const endMs = nowMs + spanMs;
  return {
    nowMs,
    endMs,
    marks: ahead
      .filter(({ atMs }) => atMs < endMs)
      .sort((a, b) => a.atMs - b.atMs)
      .map(({ name, atMs }) => ({ name, atMs, share: (atMs - nowMs) / spanMs })),
  };
}

/** Where a moment is along the scale: 0 for now and before, 1 for its end and later. */
export const shareOf = ({ nowMs, endMs }: TimeScale, atMs: number): number =>
  Math.max(0, Math.min(1, (atMs - nowMs) / (endMs - nowMs)));

/** The scale of the day's bars. Without a wrap it is as long as the cells last, or else what is due last. */
export function scaleOf(day: Day, { cells, due }: UpkeepNow, nowMs: number): TimeScale {
  const cellsEnd = cells.due.map(({ emptyAtMs }) => emptyAtMs);
  const anyEnd = due.items.flatMap(({ dueAtMs }) => (dueAtMs === undefined ? [] : [dueAtMs]));
  return timeScale(nowMs, shiftOf(day), cellsEnd.length > 0 ? cellsEnd : anyEnd);
}
