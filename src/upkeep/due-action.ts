/** What to do about a due thing: `at-cut` stands for `now` while a take is open, so nobody is sent in mid-take. */
export type DueAction = 'now' | 'at-cut' | 'later';

/** Plain order of names, the same on every phone: by code unit. */
export const byName = (one: string, other: string): number => (one < other ? -1 : one > other ? 1 : 0);

/** What to do at `nowMs` about something due at `dueAtMs` (UTC ms); never `now` during an open take. */
export function actionAt(dueAtMs: number, nowMs: number, takeOpen: boolean): DueAction {
  if (dueAtMs > nowMs) return 'later';
  return takeOpen ? 'at-cut' : 'now';
}
