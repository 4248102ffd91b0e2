import { UNITS } from '../../facts/kinds/take-logged.ts';
import { wordOf } from '../../shared/open-word.ts';
import { unitsOfTakes } from '../fold/units-of-takes.ts';
import type { Day } from '../model.ts';
import { takeText } from '../slate.ts';
import { takesInOrder } from '../takes.ts';

/** The takes that a unit shot, in runs, each from one take to another. */
export interface UnitRuns {
  /** `'main'`, `'second'`. */
  readonly unit: string;
  readonly takes: readonly { readonly from: string; readonly to: string }[];
}

/** What each unit shot, on a day of more than one. */
export function unitRunsOf(day: Day): UnitRuns[] {
  const units = unitsOfTakes(day);
  const all = [...new Set([...units.values()].flat())];
  if (all.length < 2) return [];
  return all.map((unit) => {
    const runs: { from: string; to: string; last: number }[] = [];
    for (const [at, take] of takesInOrder(day).entries()) {
      if (!units.get(take.id)?.includes(unit)) continue;
      const text = takeText(take);
      const run = runs.at(-1);
      if (run?.last === at - 1) Object.assign(run, { to: text, last: at });
      else runs.push({ from: text, to: text, last: at });
    }
    return { unit: wordOf(UNITS, unit), takes: runs.map(({ from, to }) => ({ from, to })) };
  });
}
