import { useEffect, useLayoutEffect, useMemo, useState } from 'preact/hooks';
import { type UnitPlanning, unitPlanner } from '../../../app/unit-planner.ts';
import type { Day } from '../../../day/model.ts';
import type { UnitMove } from '../../../plan/day/move-unit.ts';
import { pagePort, workerPort } from '../plan-ports.ts';

const NOTHING: UnitPlanning = { plans: [], isLooking: true, trouble: undefined };

/** The plans of a move while this screen is open, computed off the main thread. `move` is kept while it is equal. */
export function useUnitPlanner(day: Day, move: UnitMove): UnitPlanning {
  const [planning, setPlanning] = useState(NOTHING);
  const asking = useMemo(() => unitPlanner([workerPort, pagePort], setPlanning), []);
  useLayoutEffect(() => asking.ask(day, move), [asking, day, move]);
  useEffect(() => asking.close, [asking]);
  return planning;
}
