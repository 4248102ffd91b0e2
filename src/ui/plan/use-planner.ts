import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { NOTHING_PLANNED, type Planner, type Planning, planner } from '../../app/planner.ts';
import type { PlanProblem } from '../../plan/plan-problem.ts';
import { pagePort, workerPort } from './plan-ports.ts';

/** The plan for a problem while this screen is open, computed off the main thread. */
export function usePlanner(problem: PlanProblem): readonly [planning: Planning, planner: Planner] {
  const [planning, setPlanning] = useState(NOTHING_PLANNED);
  const asking = useMemo(() => planner([workerPort, pagePort], setPlanning), []);
  useLayoutEffect(() => asking.ask(problem), [asking, problem]);
  useEffect(() => asking.close, [asking]);
  useBegun(asking.begin);
  return [planning, asking];
}

/** Calls it when a finger comes down: that is aimed at what was shown. */
export function useBegun(begin: () => void): void {
  useEffect(() => {
    addEventListener('pointerdown', begin, true);
    addEventListener('keydown', begin, true);
    return () => {
      removeEventListener('pointerdown', begin, true);
      removeEventListener('keydown', begin, true);
    };
  }, [begin]);
}

/** Keeps the previous value while it is equal, so that nothing is asked twice. */
export function useSame<T>(value: T): T {
  const kept = useRef(value);
  if (kept.current !== value && JSON.stringify(kept.current) !== JSON.stringify(value)) kept.current = value;
  return kept.current;
}
