import type { PlanProblem } from '../plan/plan-problem.ts';
import type { Plan } from '../plan/setup/plan-next-setup.ts';
import { type OpenPlanPort, type Planning, planner } from './planner.ts';

/** What is known about a setup on several recorders. */
export interface SetupPlanning {
  /** Of each recorder that is planned, the main one first; the last may still be the first answer. */
  readonly plans: readonly Plan[];
  /** Whether better ones, or those of further recorders, are still to come. */
  readonly isLooking: boolean;
  /** The full plan of a recorder, if the user had already started on its first one. */
  readonly better: { readonly at: number; readonly plan: Plan } | undefined;
  /** Why there is no plan. */
  readonly trouble: (Planning['planned'] & { readonly ok: false }) | undefined;
}

/** The problem of the next recorder, given the plans of those before it; null once all are planned. */
export type ProblemAfter = (plans: readonly Plan[]) => PlanProblem | null;

export interface SetupPlanner {
  /**
   * Plans one recorder after another, but for the first ones whose plans are given. A new question replaces the one
   * before; what it has in common with that is not worked out again.
   */
  readonly ask: (problemAfter: ProblemAfter, given?: readonly Plan[]) => void;
  /** The user has started on the plans shown: from here on a first answer is not replaced without asking. */
  readonly begin: () => void;
  readonly showBetter: () => void;
  readonly close: () => void;
}

export const NO_PLANS: SetupPlanning = { plans: [], isLooking: true, better: undefined, trouble: undefined };

/** A problem as it was asked, told from others by what it says. */
interface Asked {
  readonly problem: PlanProblem;
  readonly text: string;
  /** Its first answer, or the full one. */
  plan?: Plan;
  better?: Plan;
  isFull: boolean;
}

/** Asks for the recorders of a setup one after another: each is given the full plans of those before it. */
export function setupPlanner(
  ports: readonly OpenPlanPort[],
  tell: (planning: SetupPlanning) => void,
): SetupPlanner {
  let problemAfter: ProblemAfter = () => null;
  let given: readonly Plan[] = [];
  /** One a recorder after those given, the last being worked out. */
  let asked: readonly Asked[] = [];

  const plans = (): Plan[] => [...given, ...asked.flatMap(({ plan }) => plan ?? [])];
  const say = (isLooking: boolean, trouble?: SetupPlanning['trouble']): void => {
    const at = asked.findIndex((one) => one.better);
    const plan = asked[at]?.better;
    const better = plan && { at: given.length + at, plan };
    tell({ plans: plans(), isLooking, better, trouble });
  };
  const next = (known: readonly Asked[]): void => {
    const problem = problemAfter(plans());
    if (!problem) {
      say(false);
      return;
    }
    const text = JSON.stringify(problem);
    const same = known.find((one) => one.text === text);
    asked = [...asked, same ?? { problem, text, isFull: false }];
    if (same?.isFull) {
      next(known);
      return;
    }
    say(true);
    if (!same) asking.ask(problem);
  };
  const hear = ({ problem: of, planned, isLooking, better }: Planning): void => {
    const now = asked.at(-1);
    // What else it says of a problem that is planned, such as what would help, is not asked for.
    if (!now || of !== now.problem || now.isFull || !planned) return;
    if (!planned.ok) {
      asked = asked.slice(0, -1);
      say(false, planned);
      return;
    }
    now.plan = planned.value;
    now.isFull = !isLooking;
    if (better) now.better = better;
    if (isLooking) say(true);
    else next([]);
  };
  const asking = planner(ports, hear);

  return {
    ask(after, first = []) {
      const known = asked;
      problemAfter = after;
      given = first;
      asked = [];
      next(known);
    },
    begin: asking.begin,
    showBetter() {
      const at = asked.findIndex((one) => one.better);
      const { better: plan, ...one } = asked[at] ?? {};
      if (!plan) return;
      // What was planned on the one shown is planned anew.
      asked = [...asked.slice(0, at), { ...one, plan } as Asked];
      next([]);
    },
    close: asking.close,
  };
}
