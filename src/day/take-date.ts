import type { Day, Take } from './model.ts';
import { takenAtMs } from './taken-at.ts';

/** The date on which a take rolled, where it was logged: `'2026-11-20'` for one past midnight. */
export function dateOfTake(day: Day, take: Take): string {
  const zone = day.takeItems.get(take.id)?.fact.zone ?? 0;
  return new Date(takenAtMs(day, take) + zone * 60_000).toISOString().slice(0, 10);
}
