import { useMemo, useRef } from 'preact/hooks';
import type { SetupPlanning } from '../../app/setup-planner.ts';
import type { Day, PartId } from '../../day/model.ts';
import { type Coming, withComing } from '../../plan/ahead/look-ahead.ts';
import { recordersPlanned, type Setup, setupProblem } from '../../plan/day/setup-plans.ts';
import type { Plan } from '../../plan/setup/plan-next-setup.ts';
import { useBegun } from './use-planner.ts';
import { useSetupPlanner } from './use-setup-planner.ts';
import { betterWords } from './words.ts';

/** What is planned for a recorder that rolls beside the main one. */
export interface Backup {
  readonly recorder: PartId;
  /** Undefined until one is worked out; a first answer may be replaced. */
  readonly plan: Plan | undefined;
  /** A better one is being worked out. */
  readonly isLooking: boolean;
  /** It answers an earlier question. */
  readonly isStale: boolean;
}

interface Backups {
  readonly backups: readonly Backup[];
  /** The plans of all of them; undefined until they answer this question, unless some cannot be planned. */
  readonly plans: readonly Plan[] | undefined;
  readonly trouble: SetupPlanning['trouble'];
  /** What a better plan has over the one shown. */
  readonly better: string | undefined;
  readonly begin: () => void;
  readonly showBetter: () => void;
}

/**
 * The plans of the backups, each on what the plan of the main one and those before it leave. They are asked for once
 * the main one has a plan.
 */
export function useBackups(day: Day, setup: Setup, main: Plan | undefined, coming: Coming): Backups {
  const [, ...recorders] = useMemo(() => recordersPlanned(day, setup), [day, setup]);
  const count = recorders.length;
  const given = useMemo(() => (main && count > 0 ? [main] : undefined), [main, count]);
  const after = useMemo(
    () => (plans: readonly Plan[]) => {
      const problem = setupProblem(day, setup, plans);
      return problem && withComing(problem, coming);
    },
    [day, setup, coming],
  );
  const [planning, { begin, showBetter }] = useSetupPlanner(after, given);
  useBegun(begin);
  const isCurrent = given !== undefined && planning.plans[0] === main;
  const current = useMemo(() => (isCurrent ? planning.plans.slice(1) : []), [isCurrent, planning]);
  const before = useRef(current);
  if (current.length === count) before.current = current;
  const trouble = isCurrent ? planning.trouble : undefined;
  const better = isCurrent ? planning.better : undefined;
  return {
    backups: (trouble ? recorders.slice(0, current.length) : recorders).map((recorder, at) => ({
      recorder,
      plan: current[at] ?? before.current[at],
      isLooking: planning.isLooking && at === current.length - 1,
      isStale: at >= current.length,
    })),
    plans: current.length === count || trouble ? current : undefined,
    trouble,
    better: better && betterWords(better.plan, planning.plans[better.at]!),
    begin,
    showBetter,
  };
}
