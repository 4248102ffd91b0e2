/** What to do about something due: `at-cut` replaces `now` mid-take, when nobody is sent in. */
export type DueAction = 'now' | 'at-cut' | 'later';

/** Order of names by code unit, the same on every phone. */
export const byName = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

/** What to do at `nowMs` about something due at `dueAtMs` (UTC ms); never `now` during an open take. */
export function actionAt(dueAtMs: number, nowMs: number, takeOpen: boolean): DueAction {
  if (dueAtMs > nowMs) return 'later';
  return takeOpen ? 'at-cut' : 'now';
}
