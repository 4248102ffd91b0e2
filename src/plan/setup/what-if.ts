import { ok, type Result } from '../../shared/result.ts';
import type { Move } from '../moves.ts';
import type { PlanProblem } from '../plan-problem.ts';
import { FULL_BUDGET, type Steps } from '../steps.ts';
import { type Plan, type PlanTrouble, planSteps } from './plan-next-setup.ts';

/** What would change if one more voice were needed. */
export interface WhatIf {
  readonly plan: Plan;
  readonly isRecorded: boolean;
  /** Additional moves, and moves no longer needed. */
  readonly moreMoves: readonly Move[];
  readonly fewerMoves: readonly Move[];
  /** Other needed voices that would be left out, or put in a gang, because of it. */
  readonly pushedOut: readonly string[];
  readonly pushedIntoGang: readonly string[];
}

/** Compares the plan with one that also needs this voice; `now` saves replanning. Pausable. */
export function* whatIfSteps(
  problem: PlanProblem,
  voice: string,
  now?: Plan,
): Steps<Result<WhatIf, PlanTrouble>> {
  const before = now ? ok(now) : yield* planSteps(problem, FULL_BUDGET);
  if (!before.ok) return before;
  const voices = problem.voices.map((other) =>
    other.id === voice ? { ...other, needed: true, done: false } : other,
  );
  const after = yield* planSteps({ ...problem, voices }, FULL_BUDGET);
  if (!after.ok) return after;
  const isNew = (id: string, list: readonly string[], before: readonly string[]) =>
    id !== voice && list.includes(id) && !before.includes(id);
  const out = (plan: Plan) => plan.leftOut.map((other) => other.voice);
  const ganged = (plan: Plan) =>
    plan.recorded.filter(({ gangedWith }) => gangedWith.length > 0).map((other) => other.voice);
  const ids = voices.map(({ id }) => id);
  return ok({
    plan: after.value,
    isRecorded: after.value.recorded.some((other) => other.voice === voice),
    moreMoves: without(after.value.moves, before.value.moves),
    fewerMoves: without(before.value.moves, after.value.moves),
    pushedOut: ids.filter((id) => isNew(id, out(after.value), out(before.value))),
    pushedIntoGang: ids.filter((id) => isNew(id, ganged(after.value), ganged(before.value))),
  });
}

/** Moves are equal if they do the same, whatever the reason. */
const without = (moves: readonly Move[], others: readonly Move[]): Move[] => {
  const doing = ({ because: _reason, ...rest }: Move) => JSON.stringify(rest);
  const known = new Set(others.map(doing));
  return moves.filter((move) => !known.has(doing(move)));
};
