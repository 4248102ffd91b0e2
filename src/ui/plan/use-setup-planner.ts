import { useEffect, useLayoutEffect, useMemo, useState } from 'preact/hooks';
import {
  NO_PLANS,
  type ProblemAfter,
  type SetupPlanner,
  type SetupPlanning,
  setupPlanner,
} from '../../app/setup-planner.ts';
import type { Plan } from '../../plan/setup/plan-next-setup.ts';
import { pagePort, workerPort } from './plan-ports.ts';

/**
 * The plans of recorders one after another while this screen is open, computed off the main thread, after those given;
 * nothing is asked without them. Both are kept while they are equal.
 */
export function useSetupPlanner(
  problemAfter: ProblemAfter,
  given: readonly Plan[] | undefined,
): readonly [planning: SetupPlanning, planner: SetupPlanner] {
  const [planning, setPlanning] = useState(NO_PLANS);
  const asking = useMemo(() => setupPlanner([workerPort, pagePort], setPlanning), []);
  useLayoutEffect(() => {
    if (given) asking.ask(problemAfter, given);
  }, [asking, problemAfter, given]);
  useEffect(() => asking.close, [asking]);
  return [planning, asking];
}
