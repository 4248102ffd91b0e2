import { answersNow } from '../../day/answers/answers.ts';
import type { Day, PartId } from '../../day/model.ts';
import type { PartFields, ReservedUse } from '../../facts/kinds/part-described.ts';
import { INPUTS, type InputKind, type OutputKind } from '../../facts/kinds/rig-kinds.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing } from '../command.ts';
import { laid, nextOrder, type SaidPart } from './lay-rig.ts';
import { freeNames, nameProblem } from './part-names.ts';

const MOST_AT_ONCE = 64;

const isCount = (count: number): boolean => Number.isInteger(count) && count >= 1 && count <= MOST_AT_ONCE;
const howMany = () => fail({ code: 'how-many', least: 1, most: MOST_AT_ONCE });

/** Adds inputs. Each goes to the next iso track without an input; if none is left, to no track yet. */
export function addInputs(day: Day, kind: InputKind, count: number, newId: () => PartId): CommandResult {
  if (!isCount(count)) return howMany();
  const parts = numbered(day, freeNames(day, 'input', INPUTS[kind].called, count), newId, {
    type: 'input',
    inputKind: kind,
  });
  const unfed = unfedTracks(day);
  const routes = parts.slice(0, unfed.length).map(({ part }, at) => ({ input: part, tracks: [unfed[at]!] }));
  return ok([laid(parts), ...(routes.length > 0 ? [{ kind: 'inputs-sent' as const, routes }] : [])]);
}

/** Iso tracks that no input feeds now, in reading order. */
export function unfedTracks(day: Day): PartId[] {
  const fed = new Set(answersNow(day).inputs.flatMap(({ reach }) => reach.tracks));
  return day.rig.tracks.filter(({ id, mix }) => !mix && !fed.has(id)).map(({ id }) => id);
}

/** Adds iso tracks, pre-fader, numbered on from those already there. */
export function addTracks(day: Day, count: number, newId: () => PartId): CommandResult {
  if (!isCount(count)) return howMany();
  const next = Math.max(day.rig.tracks.length, ...day.rig.tracks.map(({ name }) => Number(name) || 0)) + 1;
  const names = Array.from({ length: count }, (_, at) => String(next + at));
  return ok([laid(numbered(day, names, newId, { type: 'track', mix: false, tap: 'pre' }))]);
}

/** Adds a send of the recorder, with what it is for. */
export function addSend(day: Day, name: string, use: ReservedUse | null, newId: () => PartId): CommandResult {
  const wrong = nameProblem(day, 'send', name);
  if (wrong) return wrong;
  return ok([laid(numbered(day, [name.trim()], newId, { type: 'send', reserved: use }))]);
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
  const wrong = nameProblem(day, 'output', spec.name);
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
