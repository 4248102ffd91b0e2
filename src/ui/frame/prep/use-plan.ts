import type { DayStore } from '../../../app/day-store.ts';
import { type Checked, checkPlan, dayPlan } from '../../../radio/day/day-plan.ts';
import { useDay } from '../context.ts';

/** The last check of each open day: changing one carrier rechecks only that carrier. */
const last = new WeakMap<DayStore, Checked>();

/** The day's current frequency plan, checked. */
export function usePlan(): Checked {
  const store = useDay();
  const checked = checkPlan(dayPlan(store.day.value), last.get(store));
  last.set(store, checked);
  return checked;
}
