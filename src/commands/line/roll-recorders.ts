import type { Day, PartId, TakeId } from '../../day/model.ts';
import { newIds } from '../../day/new-ids.ts';
import { recordersOf, rollingAtTake, rollingBefore, rollingNow } from '../../day/recorders/rolling.ts';
import type { Draft } from '../../facts/fact.ts';
import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing, type Placing, placed } from '../command.ts';
import { laid, nextOrder } from '../rig/lay-rig.ts';
import { nameProblem } from '../rig/part-names.ts';
import { changeRoll } from './log-takes.ts';

/** Adds a recorder that rolls along from a place on the line on, beside those that roll there already. */
export function addRecorder(day: Day, typed: string, at: Placing = {}): CommandResult {
  const wrong = nameProblem(day, { type: 'recorder', name: typed });
  if (wrong) return wrong;
  if (at.before !== undefined && !day.takes.has(at.before)) return missing('take', at.before);
  const part = newIds(day)('recorder.2');
  const name = typed.trim();
  const rolling = idsOf(rollingBefore(day, at.before));
  return ok([
    laid([{ part, fields: { type: 'recorder', name, order: nextOrder(day) } }]),
    placed({ kind: 'recorders-rolling', recorders: [...rolling, part] }, at),
  ]);
}

/** These recorders roll from a place on the line on, and no others. */
export function rollRecorders(day: Day, recorders: readonly PartId[], at: Placing = {}): CommandResult {
  const said = rolling(day, recorders, at);
  return 'kind' in said ? ok([said]) : said;
}

/** The sound roll of one recorder from a place on the line on. */
export function loadRoll(day: Day, recorder: PartId, roll: string, at: Placing = {}): CommandResult {
  if (!idsOf(recordersOf(day)).includes(recorder)) return missing('recorder', recorder);
  if (at.before !== undefined && !day.takes.has(at.before)) return missing('take', at.before);
  const said = changeRoll(roll, at);
  if (!said.ok || recorder === FIRST_RECORDER) return said;
  return ok(said.value.map((draft) => ({ ...draft, recorder }) as Draft));
}

/** These recorders rolled at one take; the takes after it stay on those that they are on. */
export function correctRolling(day: Day, take: TakeId, recorders: readonly PartId[]): CommandResult {
  const place = day.takeOrder.indexOf(take);
  if (place < 0) return missing('take', take);
  const said = rolling(day, recorders, { before: take });
  if (!('kind' in said)) return said;
  const next = day.takeOrder[place + 1];
  const after = idsOf(next === undefined ? rollingNow(day) : rollingAtTake(day, next));
  const back: Draft[] = isSame(after, recorders)
    ? []
    : [placed({ kind: 'recorders-rolling', recorders: after }, { before: next })];
  return ok([said, ...back]);
}

function rolling(day: Day, recorders: readonly PartId[], at: Placing): Draft | CommandResult {
  const known = idsOf(recordersOf(day));
  const unknown = recorders.find((id) => !known.includes(id));
  if (unknown !== undefined) return missing('recorder', unknown);
  if (at.before !== undefined && !day.takes.has(at.before)) return missing('take', at.before);
  if (recorders.length === 0) return fail({ code: 'no-recorder-rolls' });
  if (isSame(idsOf(rollingBefore(day, at.before)), recorders)) return fail({ code: 'nothing-changed' });
  return placed({ kind: 'recorders-rolling', recorders: known.filter((id) => recorders.includes(id)) }, at);
}

const idsOf = (recorders: readonly { readonly id: PartId }[]): PartId[] => recorders.map(({ id }) => id);

const isSame = (some: readonly PartId[], others: readonly PartId[]): boolean =>
  some.length === new Set(others).size && some.every((id) => others.includes(id));
