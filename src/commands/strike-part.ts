import { answersAtTake } from '../day/answers.ts';
import type { Day, Part, PartId, Take } from '../day/model.ts';
import { takeText } from '../day/slate.ts';
import { takesInOrder } from '../day/takes.ts';
import type { PartFields, ReservedUse } from '../facts/part-described.ts';
import { fail, ok, type Problem, type Result } from '../shared/result.ts';
import { missing, type Said } from './command.ts';
import { laid } from './lay-rig.ts';
import { nameProblem } from './part-names.ts';

// A part holds for the whole day, so striking one out reaches back to every take. Whatever recorded a voice on a take
// is therefore never struck or reserved: it is unplugged, retuned or thrown from here on instead.

/** The first take on which somebody was recorded by way of one of these parts. */
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

function recordedProblem(day: Day, part: Part, parts: ReadonlySet<PartId>): Result<never, Problem> | null {
  const take = takeThrough(day, parts);
  return take ? fail({ code: 'part-recorded', name: part.name, take: takeText(take) }) : null;
}

/** A part with those that go with it: a receiver's channels and outputs, an input's selector. */
function withDependents(parts: Iterable<Part>, { id }: Part): Part[] {
  return [...parts].filter(
    (part) =>
      part.id === id ||
      part.receiver === id ||
      (part.type === 'selector' && part.input === id) ||
      (part.type === 'output' && part.carries?.length === 1 && part.carries[0] === id),
  );
}

const saidOf = (parts: readonly Part[], fields: PartFields): Said =>
  parts.length === 1
    ? ok([{ kind: 'part-described', part: parts[0]!.id, fields }])
    : ok([laid(parts.map(({ id }) => ({ part: id, fields })))]);

/** Strikes a part out of the rig, with what goes with it. Fails with `part-recorded` where a take would lose a voice. */
export function strikePart(day: Day, id: PartId): Said {
  const part = day.rig.byId.get(id);
  if (!part) return missing('part', id);
  const parts = withDependents(day.rig.byId.values(), part);
  return recordedProblem(day, part, new Set(parts.map((one) => one.id))) ?? saidOf(parts, { struck: true });
}

/** Strikes the whole rig, to lay another; fails once somebody was recorded with it. */
export function strikeRig(day: Day): Said {
  const parts = [...day.rig.byId.values()];
  if (parts.length === 0) return fail({ code: 'rig-empty' });
  const take = takeThrough(day, new Set(parts.map(({ id }) => id)));
  if (take) return fail({ code: 'part-recorded', name: 'The rig', take: takeText(take) });
  return saidOf(parts, { struck: true });
}

/** Every part that was struck out, as it was. */
function allStruck(day: Day): Part[] {
  const parts = new Map<PartId, Part>();
  const merge = (id: PartId, fields: PartFields): void => {
    const blank: Part = { id, type: 'input', name: id, order: parts.size };
    parts.set(id, { ...blank, ...parts.get(id), ...fields } as Part);
  };
  for (const fact of day.facts) {
    if (day.takenBack.has(fact.id)) continue;
    if (fact.kind === 'part-described') merge(fact.part, fact.fields);
    if (fact.kind === 'rig-laid') for (const { part, fields } of fact.parts) merge(part, fields);
  }
  return [...parts.values()].filter(({ struck }) => struck);
}

/** What was struck out and can be brought back, without what comes back with it, in reading order. */
export function struckParts(day: Day): Part[] {
  const struck = allStruck(day);
  return struck
    .filter((part) => !struck.some((owner) => owner !== part && withDependents([part], owner).length > 0))
    .sort((a, b) => a.order - b.order);
}

/** Brings a struck part back, with what was struck with it; its leads and tunings are as they were. */
export function bringBackPart(day: Day, id: PartId): Said {
  const struck = allStruck(day);
  const part = struck.find((one) => one.id === id);
  if (!part) return fail({ code: 'not-taken-back' });
  return nameProblem(day, part.type, part.name) ?? saidOf(withDependents(struck, part), { struck: false });
}

/** Keeps an output, an input or a send for comms, playback or timecode: never offered to a voice. Null gives it back. */
export function reservePart(day: Day, id: PartId, use: ReservedUse | null): Said {
  const part = day.rig.byId.get(id);
  if (!part || !['output', 'input', 'send'].includes(part.type)) return missing('output', id);
  const wrong = use === null ? null : recordedProblem(day, part, new Set([id]));
  return wrong ?? ok([{ kind: 'part-described', part: id, fields: { reserved: use } }]);
}
