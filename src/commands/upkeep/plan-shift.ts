import type { Day } from '../../day/model.ts';
import { takesInOrder } from '../../day/takes.ts';
import type { ShiftFields } from '../../facts/kinds/upkeep-logged.ts';
import { ok } from '../../shared/result.ts';
import type { CommandResult, Moment } from '../command.ts';
import { lastMs, nearestMs, nextMs, readClockTime, showsAt } from './shift-times.ts';

/** The hours of the day as typed clock times; empty if unknown. */
export interface TypedShift {
  readonly call: string;
  readonly meal: string;
  readonly wrap: string;
}

/**
 * Plans the shift. The date of a clock time follows from earlier plans and the first take, and only without
 * those from the current time, so saving again late in the day moves nothing to tomorrow.
 */
export function planShift(day: Day, typed: TypedShift, now: Moment): CommandResult {
  const call = readClockTime(typed.call);
  if (!call.ok) return call;
  const meal = readClockTime(typed.meal);
  if (!meal.ok) return meal;
  const wrap = readClockTime(typed.wrap);
  if (!wrap.ok) return wrap;
  const callAtMs = call.value === null ? null : callMs(day, call.value, now);
  const shift: ShiftFields =
    callAtMs === null
      ? withoutCall(day, meal.value, wrap.value, now)
      : { mealAtMs: after(callAtMs, meal.value, now), wrapAtMs: after(callAtMs, wrap.value, now) };
  return ok([{ kind: 'shift-planned', shift: { callAtMs, ...shift } }]);
}

const HOUR_MS = 3_600_000;

/** How long before a call moved later the first take may have rolled. */
const BEFORE_CALL_MS = 6 * HOUR_MS;

/** A postponed call moves further than an advanced one: 06:00 may become 19:00 of the same day. */
const PUT_OFF_MS = 14 * HOUR_MS;

/** Wrap is entered hours ahead, and rarely long after it. */
const AHEAD_OF_WRAP_MS = 20 * HOUR_MS;

function callMs(day: Day, minutes: number, now: Moment): number {
  const planned = day.upkeep.shift.callAtMs ?? undefined;
  const first = firstTakeMs(day);
  const latestMs = first === undefined ? Number.POSITIVE_INFINITY : first + BEFORE_CALL_MS;
  if (planned !== undefined && planned <= latestMs && showsAt(minutes, planned, now.zone)) return planned;
  if (first !== undefined) return lastMs(minutes, latestMs, now.zone);
  return planned === undefined ? nearestMs(minutes, now) : lastMs(minutes, planned + PUT_OFF_MS, now.zone);
}

const after = (callAtMs: number, minutes: number | null, { zone }: Moment): number | null =>
  minutes === null ? null : nextMs(minutes, callAtMs, zone);

/** The meal break comes before wrap. */
function withoutCall(day: Day, meal: number | null, wrap: number | null, now: Moment): ShiftFields {
  const { mealAtMs, wrapAtMs } = day.upkeep.shift;
  const atMs = firstTakeMs(day) ?? now.atMs;
  const wrapMs =
    wrap === null ? null : (kept(wrapAtMs, wrap, now) ?? lastMs(wrap, atMs + AHEAD_OF_WRAP_MS, now.zone));
  if (meal === null) return { mealAtMs: null, wrapAtMs: wrapMs };
  const byWrap = wrapMs === null ? undefined : lastMs(meal, wrapMs, now.zone);
  return {
    mealAtMs: byWrap ?? kept(mealAtMs, meal, now) ?? nearestMs(meal, { ...now, atMs }),
    wrapAtMs: wrapMs,
  };
}

const kept = (planned: number | null | undefined, minutes: number, { zone }: Moment): number | undefined =>
  planned && showsAt(minutes, planned, zone) ? planned : undefined;

function firstTakeMs(day: Day): number | undefined {
  const rolled = takesInOrder(day).flatMap(({ rolledAt }) => rolledAt ?? []);
  return rolled.length === 0 ? undefined : Math.min(...rolled);
}
