import { isOnTheLine } from '../../day/fold/line-item.ts';
import type { Day, FactId } from '../../day/model.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing } from '../command.ts';

/** Retracts facts. What was placed before a retracted take keeps its place. */
export function takeBack(day: Day, targets: readonly FactId[]): CommandResult {
  const standing = targets.filter((id) => !day.takenBack.has(id));
  if (standing.length === 0) return fail({ code: 'already-taken-back' });
  return ok([{ kind: 'fact-retracted', targets: standing, by: 'hand' }]);
}

/** Restores facts by retracting their retractions. */
export function bringBack(day: Day, targets: readonly FactId[]): CommandResult {
  const wanted = new Set(targets);
  const culprits = day.facts.filter(
    (fact) =>
      fact.kind === 'fact-retracted' &&
      !day.takenBack.has(fact.id) &&
      fact.targets.some((target) => wanted.has(target)),
  );
  if (culprits.length === 0) return fail({ code: 'not-taken-back' });
  return ok([{ kind: 'fact-retracted', targets: culprits.map(({ id }) => id), by: 'hand' }]);
}

/** Moves a change or a take to just before a take, or (null) back to where it was recorded. */
export function moveBefore(day: Day, target: FactId, take: FactId | null): CommandResult {
  const fact = day.facts.find(({ id }) => id === target);
  if (!fact || !isOnTheLine(fact)) return missing('change', target);
  if (take !== null && !day.takes.has(take)) return missing('take', take);
  if (take === target) return fail({ code: 'before-itself' });
  return ok([{ kind: 'fact-moved', target, to: take }]);
}
