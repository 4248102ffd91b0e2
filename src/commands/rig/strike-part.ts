import { answersAtTake } from '../../day/answers/answers.ts';
import type { Day, FactId, Part, PartId, Take } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { ownPartsOf } from '../../day/recorders/recorder-parts.ts';
import { firstTakeOn } from '../../day/recorders/rolling.ts';
import { takeText } from '../../day/slate.ts';
import { takesInOrder } from '../../day/takes.ts';
import type { PartFields, ReservedUse } from '../../facts/kinds/part-described.ts';
import { fail, ok, type Problem, type Result } from '../../shared/result.ts';
import { type CommandResult, missing, together } from '../command.ts';
import { laid } from './lay-rig.ts';
import { pinsWithout } from './not-struck.ts';
import { nameProblem } from './part-names.ts';

// A part holds for the whole day, so removing one reaches back to every take. A part that recorded a voice on
// a take is therefore never removed or reserved: it is unplugged, retuned or switched from here on instead.

/** The first take on which somebody was recorded through one of these parts. */
function takeThrough(day: Day, parts: ReadonlySet<PartId>): Take | undefined {
  const has = (id: PartId | null): boolean => id !== null && parts.has(id);
  return takesInOrder(day).find((take) =>
    answersAtTake(day, take.id).voices.some(({ paths }) =>
      paths.some(
        (path) =>
          path.broken === null &&
          (has(path.transmitter) ||
            has(path.channel) ||
            has(path.output) ||
            has(path.input) ||
            has(path.selector) ||
            path.tracks.some(has)),
      ),
    ),
  );
}

/** Why a part cannot change for the whole day: somebody was recorded through it or its dependents. */
export function recordedProblem(
  day: Day,
  part: Part,
  parts: ReadonlySet<PartId>,
): Result<never, Problem> | null {
  const take = takeThrough(day, parts);
  const name = part.type === 'track' ? `Track ${part.name}` : part.name;
  return take ? fail({ code: 'part-recorded', name, take: takeText(take) }) : null;
}

/** Takes that are on a recorder would lose it, or its tracks: without any it has those of the first one. */
export function rolledProblem(day: Day, part: Part): Result<never, Problem> | null {
  const recorder = part.type === 'track' ? recorderOfPart(part) : part.id;
  if (part.type === 'track' && ownPartsOf(day.rig, recorder).tracks.length > 1) return null;
  if (!day.rig.recorders.some(({ id }) => id === recorder)) return null;
  const take = firstTakeOn(day, recorder);
  return take ? fail({ code: 'recorder-rolled', name: nameOf(day, recorder), take: takeText(take) }) : null;
}

const nameOf = ({ rig }: Day, id: PartId): string => rig.byId.get(id)?.name ?? id;

/** A part with its dependents: what is a recorder's, a receiver's channels and outputs, an input's selector. */
function withDependents<P extends Part>(all: Iterable<P>, { id }: Part): P[] {
  const parts = [...all];
  const of = new Set([id, ...parts.filter(({ recorder }) => recorder === id).map((part) => part.id)]);
  return parts.filter(
    (part) =>
      of.has(part.id) ||
      part.receiver === id ||
      (part.type === 'selector' && part.input !== undefined && of.has(part.input)) ||
      (part.type === 'output' && part.carries?.length === 1 && part.carries[0] === id),
  );
}

const saidOf = (parts: readonly Part[], fields: PartFields): CommandResult =>
  parts.length === 1
    ? ok([{ kind: 'part-described', part: parts[0]!.id, fields }])
    : ok([laid(parts.map(({ id }) => ({ part: id, fields })))]);

/** Removes a part with its dependents. Fails with `part-recorded` if a take would lose a voice. */
export function strikePart(day: Day, id: PartId): CommandResult {
  const part = day.rig.byId.get(id);
  if (!part) return missing('part', id);
  const parts = withDependents(day.rig.byId.values(), part);
  const ids = new Set(parts.map((one) => one.id));
  return (
    rolledProblem(day, part) ??
    recordedProblem(day, part, ids) ??
    together(saidOf(parts, { struck: true }), ok(pinsWithout(day, (pinned) => ids.has(pinned))))
  );
}

/** Removes the whole rig, to set up another; fails once somebody was recorded with it. */
export function strikeRig(day: Day): CommandResult {
  const parts = [...day.rig.byId.values()];
  if (parts.length === 0) return fail({ code: 'rig-empty' });
  const take = takeThrough(day, new Set(parts.map(({ id }) => id)));
  if (take) return fail({ code: 'part-recorded', name: 'The rig', take: takeText(take) });
  const rolled = parts.map((part) => rolledProblem(day, part)).find((problem) => problem !== null);
  if (rolled) return rolled;
  return saidOf(parts, { struck: true });
}

/** A removed part, as it was, and the fact that removed it. */
interface StruckPart extends Part {
  readonly by: FactId;
}

function allStruck(day: Day): StruckPart[] {
  const parts = new Map<PartId, StruckPart>();
  const merge = (by: FactId, id: PartId, fields: PartFields): void => {
    const blank = { id, type: 'input', name: id, order: parts.size } as const;
    parts.set(id, { ...blank, ...parts.get(id), ...fields, ...(fields.struck && { by }) } as StruckPart);
  };
  for (const fact of day.facts) {
    if (day.takenBack.has(fact.id)) continue;
    if (fact.kind === 'part-described') merge(fact.id, fact.part, fact.fields);
    if (fact.kind === 'rig-laid') for (const { part, fields } of fact.parts) merge(fact.id, part, fields);
  }
  return [...parts.values()].filter(({ struck }) => struck);
}

/** A removed part with those removed along with it. */
const struckWith = (struck: readonly StruckPart[], part: StruckPart): StruckPart[] =>
  withDependents(struck, part).filter(({ by }) => by === part.by);

/** Why parts cannot come back: another has the same name, or another selector is before the same input. */
function returnProblem(day: Day, parts: readonly Part[]): Result<never, Problem> | null {
  for (const part of parts) {
    const { type, input } = part;
    const wrong = nameProblem(day, part);
    if (wrong) return wrong;
    const other = day.rig.selectors.find((one) => type === 'selector' && one.input === input);
    if (other) return fail({ code: 'selector-there', input: day.rig.byId.get(input!)?.name ?? input! });
  }
  return null;
}

/** The removed parts that can come back, without their dependents, in reading order. */
export function struckParts(day: Day): Part[] {
  const struck = allStruck(day);
  return struck
    .filter((part) => !struck.some((owner) => owner !== part && withDependents([part], owner).length > 0))
    .filter((part) => returnProblem(day, struckWith(struck, part)) === null)
    .sort((a, b) => a.order - b.order);
}

/** Brings a removed part back with its dependents, leads and tunings as they were. */
export function bringBackPart(day: Day, id: PartId): CommandResult {
  const struck = allStruck(day);
  const part = struck.find((one) => one.id === id);
  if (!part) return fail({ code: 'not-taken-back' });
  const parts = struckWith(struck, part);
  return returnProblem(day, parts) ?? saidOf(parts, { struck: false });
}

/** Reserves an output, an input or a send, so that no voice gets it. Null frees it. */
export function reservePart(day: Day, id: PartId, use: ReservedUse | null): CommandResult {
  const part = day.rig.byId.get(id);
  if (!part || !['output', 'input', 'send'].includes(part.type)) return missing('output', id);
  const wrong = use === null ? null : recordedProblem(day, part, new Set([id]));
  return wrong ?? ok([{ kind: 'part-described', part: id, fields: { reserved: use } }]);
}
