const DAY_MS = 86_400_000;

const isoOf = (ms: number): string => new Date(ms).toISOString().slice(0, 10);

/** The date on a clock so many minutes east of UTC: `dateAt(Date.UTC(2026, 4, 4, 23), 120)` is `'2026-05-05'`. */
export const dateAt = (atMs: number, zone: number): string => isoOf(atMs + zone * 60_000);

/** The date after one, `'2026-06-01'` after `'2026-05-31'`; undefined where there is no such date. */
export function nextDate(date: string): string | undefined {
  const ms = Date.parse(`${date}T00:00:00Z`);
  if (Number.isNaN(ms) || isoOf(ms) !== date) return undefined;
  const next = isoOf(ms + DAY_MS);
  // After the year 9999 there is a sign before the year.
  return next.startsWith('+') ? undefined : next;
}
