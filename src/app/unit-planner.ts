import type { Day } from '../day/model.ts';
import { type UnitMove, unitProblem } from '../plan/day/move-unit.ts';
import type { Plan } from '../plan/setup/plan-next-setup.ts';
import { type OpenPlanPort, type Planning, planner } from './planner.ts';

/** What is known about a move of the unit. */
export interface UnitPlanning {
  /** Of each recorder that is planned, the main one first; the last may still be the first answer. */
  readonly plans: readonly Plan[];
  /** Whether better ones, or those of further recorders, are still to come. */
  readonly isLooking: boolean;
  /** Why there is no plan. */
  readonly trouble: (Planning['planned'] & { readonly ok: false }) | undefined;
}

export interface UnitPlanner {
  /** Plans one recorder after another. A new question replaces the one before. */
  readonly ask: (day: Day, move: UnitMove) => void;
  readonly close: () => void;
}

const NOTHING: UnitPlanning = { plans: [], isLooking: true, trouble: undefined };

/** Asks for the recorders of a move one after another: each is given the full plans of those before it. */
export function unitPlanner(
  ports: readonly OpenPlanPort[],
  tell: (planning: UnitPlanning) => void,
): UnitPlanner {
  let asked: { readonly day: Day; readonly move: UnitMove } | undefined;
  let done: readonly Plan[] = [];
  let problem: ReturnType<typeof unitProblem> = null;

  const next = (): void => {
    problem = asked ? unitProblem(asked.day, asked.move, done) : null;
    if (problem) asking.ask(problem);
    else tell({ plans: done, isLooking: false, trouble: undefined });
  };
  const hear = ({ problem: of, planned, isLooking }: Planning): void => {
    if (of !== problem || !planned) return;
    if (!planned.ok) {
      tell({ plans: done, isLooking: false, trouble: planned });
      return;
    }
    const plans = [...done, planned.value];
    if (isLooking) {
      tell({ plans, isLooking: true, trouble: undefined });
      return;
    }
    // What else it says of this problem, such as what would help, is not asked for.
    done = plans;
    next();
  };
  const asking = planner(ports, hear);

  return {
    ask(day, move) {
      asked = { day, move };
      done = [];
      tell(NOTHING);
      next();
    },
    close: asking.close,
  };
}
