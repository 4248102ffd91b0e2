import { answersNow } from '../../day/answers/answers.ts';
import type { Day, PartId } from '../../day/model.ts';
import { recordsAs } from '../../day/recorders/recorder-ids.ts';
import { ownPartsOf } from '../../day/recorders/recorder-parts.ts';
import { firstTakeOn, recordersOf } from '../../day/recorders/rolling.ts';
import { takeText } from '../../day/slate.ts';
import type { PartFields, ReservedUse } from '../../facts/kinds/part-described.ts';
import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import { INPUTS, type InputKind, type OutputKind } from '../../facts/kinds/rig-kinds.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing } from '../command.ts';
import { laid, nextOrder, type SaidPart } from './lay-rig.ts';
import { freeNames, nameProblem } from './part-names.ts';

const MOST_AT_ONCE = 64;

const isCount = (count: number): boolean => Number.isInteger(count) && count >= 1 && count <= MOST_AT_ONCE;
const howMany = () => fail({ code: 'how-many', least: 1, most: MOST_AT_ONCE });

/**
 * Adds inputs to a recorder. Each goes to its next iso track without an input; if none is left, to no track
 * yet.
 */
export function addInputs(
  day: Day,
  kind: InputKind,
  count: number,
  newId: () => PartId,
  recorder: PartId = FIRST_RECORDER,
): CommandResult {
  const wrong = recorderProblem(day, recorder);
  if (wrong) return wrong;
  if (!isCount(count)) return howMany();
  const names = freeNames(day, 'input', INPUTS[kind].called, count, recorder);
  const parts = numbered(day, names, newId, { type: 'input', inputKind: kind, ...belongingTo(recorder) });
  const unfed = unfedTracks(day, recorder);
  const routes = parts.slice(0, unfed.length).map(({ part }, at) => ({ input: part, tracks: [unfed[at]!] }));
  return ok([laid(parts), ...(routes.length > 0 ? [{ kind: 'inputs-sent' as const, routes }] : [])]);
}

/** Iso tracks of a recorder that no input feeds now, in reading order. */
export function unfedTracks(day: Day, recorder: PartId = FIRST_RECORDER): PartId[] {
  const fed = new Set(answersNow(day).inputs.flatMap(({ reach }) => reach.tracks));
  return ownPartsOf(day.rig, recorder)
    .tracks.filter(({ id, mix }) => !mix && !fed.has(id))
    .map(({ id }) => id);
}

const recorderProblem = (day: Day, recorder: PartId) =>
  recordersOf(day).some(({ id }) => id === recorder) ? null : missing('recorder', recorder);

/** The takes of a recorder without tracks of its own have those of the first one. */
export function firstTracksProblem(day: Day, recorder: PartId) {
  if (recorder === FIRST_RECORDER || recordsAs(day.rig, recorder) === recorder) return null;
  const take = firstTakeOn(day, recorder);
  const name = day.rig.byId.get(recorder)!.name;
  return take ? fail({ code: 'tracks-of-first', name, take: takeText(take) }) : null;
}

/** A part of the first recorder does not say so: an earlier app reads it all the same. */
export const belongingTo = (recorder: PartId): PartFields =>
  recorder === FIRST_RECORDER ? {} : { recorder };

/** Adds iso tracks to a recorder, pre-fader, numbered on from those already there. */
export function addTracks(
  day: Day,
  count: number,
  newId: () => PartId,
  recorder: PartId = FIRST_RECORDER,
): CommandResult {
  const wrong = recorderProblem(day, recorder) ?? firstTracksProblem(day, recorder);
  if (wrong) return wrong;
  if (!isCount(count)) return howMany();
  const { tracks } = ownPartsOf(day.rig, recorder);
  const next = Math.max(tracks.length, ...tracks.map(({ name }) => Number(name) || 0)) + 1;
  const names = Array.from({ length: count }, (_, at) => String(next + at));
  const fields: PartFields = { type: 'track', mix: false, tap: 'pre', ...belongingTo(recorder) };
  return ok([laid(numbered(day, names, newId, fields))]);
}

/** Adds a send of a recorder, with what it is for. */
export function addSend(
  day: Day,
  name: string,
  use: ReservedUse | null,
  newId: () => PartId,
  recorder: PartId = FIRST_RECORDER,
): CommandResult {
  const wrong = recorderProblem(day, recorder) ?? nameProblem(day, { type: 'send', name, recorder });
  if (wrong) return wrong;
  const fields: PartFields = { type: 'send', reserved: use, ...belongingTo(recorder) };
  return ok([laid(numbered(day, [name.trim()], newId, fields))]);
}

export interface OutputSpec {
  readonly name: string;
  readonly kind: OutputKind;
  /** The channel it carries; null for an output without a voice. */
  readonly channel: PartId | null;
  readonly reserved?: ReservedUse | null;
}

/** Adds an output to a receiver: a second way out for a channel, or one for timecode or comms. */
export function addOutput(day: Day, receiver: PartId, spec: OutputSpec, id: PartId): CommandResult {
  if (day.rig.byId.get(receiver)?.type !== 'receiver') return missing('receiver', receiver);
  const channel = spec.channel === null ? null : day.rig.byId.get(spec.channel);
  if (channel === undefined) return missing('channel', spec.channel ?? '');
  const wrong = nameProblem(day, { type: 'output', name: spec.name });
  if (wrong) return wrong;
  const fields: PartFields = {
    type: 'output',
    name: spec.name.trim(),
    receiver,
    outputKind: spec.kind,
    carries: channel ? [channel.id] : [],
    reserved: spec.reserved ?? null,
    order: nextOrder(day),
    ...(channel?.module !== undefined && { module: channel.module }),
  };
  return ok([laid([{ part: id, fields }])]);
}

function numbered(day: Day, names: readonly string[], newId: () => PartId, fields: PartFields): SaidPart[] {
  const order = nextOrder(day);
  return names.map((name, at) => ({ part: newId(), fields: { ...fields, name, order: order + at } }));
}
