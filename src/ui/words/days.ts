import type { DayOutline } from '../../app/ports.ts';

/** What a day is called in the list. */
export const titleOf = (day: DayOutline): string =>
  [day.sample ? 'Sample' : '', day.production, day.label].filter(Boolean).join(' · ') || 'Untitled day';
