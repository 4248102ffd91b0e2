import type { DayStore } from '../../../app/day-store.ts';
import { type Checked, checkPlan, dayPlan } from '../../../radio/day/day-plan.ts';
import { useDay } from '../context.ts';

/** The last check of each open day: a plan with one carrier changed costs only that carrier. */
const last = new WeakMap<DayStore, Checked>();

/** The frequency plan of the day as it stands, checked. */
export function usePlan(): Checked {
  const store = useDay();
  const checked = checkPlan(dayPlan(store.day.value), last.get(store));
  last.set(store, checked);
  return checked;
}
