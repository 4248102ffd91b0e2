import type { Day } from '../day/model.ts';
import { openTakes } from '../day/takes.ts';
import type { Clock } from './ports.ts';

/** Looked at within this time of its last entry, a sample day goes by the phone's own clock. */
const SAME_DAY_MS = 6 * 3_600_000;
/** After its last entry, before one looks at it. */
const PAUSE_MS = 8 * 60_000;

/**
 * The phone's clock; but a sample day goes on from where it was left, in its own zone. Otherwise all that falls
 * due on it would have been due for weeks, or not for months.
 */
export function clockOf(day: () => Day, clock: Clock): Clock {
  let shiftMs: number | undefined;
  return {
    now() {
      const now = clock.now();
      const { header, lastAt, facts } = day();
      if (!header.sample) return now;
      shiftMs ??= shiftTo(lastAt, now.atMs, openTakes(day()).length > 0 ? 0 : PAUSE_MS);
      return shiftMs === 0 ? now : { ...now, atMs: now.atMs + shiftMs, zone: facts.at(-1)?.zone ?? now.zone };
    },
  };
}

const shiftTo = (lastAtMs: number, nowMs: number, pauseMs: number): number =>
  Math.abs(nowMs - lastAtMs) < SAME_DAY_MS ? 0 : lastAtMs + pauseMs - nowMs;
