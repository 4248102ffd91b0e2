import type { Day, FactId, TakeId } from '../../day/model.ts';
import { registersOf } from '../../day/phones/field-conflicts.ts';
import { ORDER_LINK } from '../../day/phones/order-unsure.ts';
import { takesInOrder } from '../../day/takes.ts';
import type { Draft, Fact } from '../../facts/fact.ts';
import { bodyOf } from '../../facts/kinds/envelope.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing } from '../command.ts';

/**
 * Decides which of several values of one link is true: it then holds from the first of them on the line,
 * takes included. Null: all of it happened, in this order.
 */
export function resolveConflict(
  day: Day,
  link: string,
  among: readonly FactId[],
  stands: FactId | null,
): CommandResult {
  const unknown = among.find((id) => !day.facts.some((fact) => fact.id === id));
  if (unknown !== undefined) return missing('change', unknown);
  if (stands !== null && !among.includes(stands)) return missing('change', stands);
  return ok([{ kind: 'conflict-resolved', link, among: [...among], stands }]);
}

/** Restates one field of a fact now that all its values are known, which ends the conflict. */
export function sayFieldAgain(day: Day, id: FactId, { of, id: thing, field }: DescribedField): CommandResult {
  const fact = day.facts.find((one) => one.id === id);
  const register =
    fact && registersOf(fact).find((one) => one.of === of && one.id === thing && one.field === field);
  if (!fact || !register) return missing('change', id);
  const fields = field === 'mark' ? marksOf(fact) : { [field]: register.value };
  const thingIs = of === 'day' ? {} : { [of]: thing };
  return ok([{ kind: `${of}-described`, ...thingIs, fields } as Draft]);
}

interface DescribedField {
  readonly of: 'day' | 'voice' | 'part' | 'take';
  readonly id: string;
  readonly field: string;
}

function marksOf(fact: Fact): { circled: boolean; noGood: boolean } {
  const { circled = false, noGood = false } = fact.kind === 'take-described' ? fact.fields : {};
  return { circled, noGood };
}

/** Merges two takes logged by two phones: notes and marks of both go to `into`, and `take` disappears. */
export function joinTakes(day: Day, take: TakeId, into: TakeId): CommandResult {
  if (!day.takes.has(take)) return missing('take', take);
  if (!day.takes.has(into)) return missing('take', into);
  if (take === into) return fail({ code: 'before-itself' });
  return ok([{ kind: 'takes-joined', take, into }]);
}

/** Decides whether a change came before or after a take, where the clocks could not tell. */
export function decideOrder(day: Day, change: FactId, take: TakeId, isBefore: boolean): CommandResult {
  const item = day.line.find(({ fact }) => fact.id === change);
  const of = day.takeItems.get(take);
  if (!item) return missing('change', change);
  if (!of) return missing('take', take);
  if (item.place < of.place === isBefore)
    return ok([{ kind: 'conflict-resolved', link: ORDER_LINK, among: [change, take], stands: null }]);
  if (isBefore) return ok([{ kind: 'fact-moved', target: change, to: take }]);
  const next = takesInOrder(day).find(({ id }) => day.takeItems.get(id)!.place > of.place);
  if (next) return ok([{ kind: 'fact-moved', target: change, to: next.id }]);
  // Nothing was logged after that take, so the change is recorded again after it.
  return ok([{ kind: 'fact-retracted', targets: [change], by: 'hand' }, bodyOf(item.fact) as Draft]);
}
