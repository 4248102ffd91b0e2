import { counterOf, databaseOf } from '../shared/ids.ts';
import type { Problem } from '../shared/result.ts';
import type { Envelope } from './envelope.ts';

const DAY_MS = 86_400_000;

/**
 * What a day may be after something was taken in. It is less than what is read: whatever grows from here on (counters
 * by one, entries by those said here, each with the counters of all databases known) has room for a lifetime of days
 * below what the next reader refuses. `aheadMs` is how far after this phone's clock an entry may be dated: a later
 * entry of whoever knows it is never earlier on the line.
 */
export const DOOR_LIMITS = {
  counter: 10_000_000,
  facts: 150_000,
  /** Characters of the entries as a file has them. */
  size: 30_000_000,
  databases: 100,
  aheadMs: 2 * 366 * DAY_MS,
} as const;

/** Why these facts may not come onto a day that has others; undefined where they may. `nowMs` is the phone's clock. */
export function refusedAtDoor(
  here: readonly Envelope[],
  fresh: readonly Envelope[],
  nowMs: number,
): Problem | undefined {
  if (fresh.length === 0) return undefined;
  const high = fresh.find(({ id, seen = {} }) =>
    [counterOf(id), ...Object.values(seen)].some((counter) => counter > DOOR_LIMITS.counter),
  );
  if (high) return { code: 'door-counter', limit: DOOR_LIMITS.counter };
  const latest = fresh.reduce((last, { at }) => Math.max(last, at), 0);
  if (latest > nowMs + DOOR_LIMITS.aheadMs) return { code: 'door-date', atMs: latest, nowMs };
  const all = [...here, ...fresh];
  if (all.length > DOOR_LIMITS.facts)
    return { code: 'door-facts', count: all.length, limit: DOOR_LIMITS.facts };
  const databases = new Set(all.map(({ id }) => databaseOf(id))).size;
  if (databases > DOOR_LIMITS.databases)
    return { code: 'door-databases', count: databases, limit: DOOR_LIMITS.databases };
  const size = all.reduce((sum, fact) => sum + JSON.stringify(fact).length, 0);
  if (size > DOOR_LIMITS.size) return { code: 'door-size' };
  return undefined;
}
