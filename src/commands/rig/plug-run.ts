import { type Answers, answersBefore } from '../../day/answers/answers.ts';
import { voiceName } from '../../day/answers/track-answers.ts';
import { leadsOf, type PluggedLead } from '../../day/chain/leads.ts';
import type { Day, Links, Part, PartId, Rig, SelectorPosition, VoiceId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { leadHomes, leadOf, newLeadId } from '../../day/recorders/lead-of-end.ts';
import { recorderIds, recordsAs } from '../../day/recorders/recorder-ids.ts';
import { ownPartsOf } from '../../day/recorders/recorder-parts.ts';
import { inputsFitting, type OutputKind } from '../../facts/kinds/rig-kinds.ts';
import type { Open } from '../../shared/open-word.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing, type Placing, placed } from '../command.ts';

/**
 * The lead from an output or a hardline voice to a recorder, if any, preferring a plugged one; by whichever
 * recorder if none is named.
 */
export function leadFrom(
  rig: Rig,
  links: Links,
  from: PartId | VoiceId,
  recorder?: PartId,
): PluggedLead | undefined {
  if (recorder !== undefined) return leadOf(rig, links, from, recorder);
  return [...leadsOf(rig, links)]
    .filter(({ link }) => link.value.from === from)
    .sort((a, b) => Number(b.link.value.to !== null) - Number(a.link.value.to !== null))[0];
}

/**
 * The lead of an output or a hardline voice to a recorder: the one it has there or, earlier on the line, the
 * one it gets later, since an output has one lead to a recorder all day. Its leads to other recorders stay,
 * and so do those that are `taken` in the same breath.
 */
function leadFor(
  day: Day,
  links: Links,
  from: PartId | VoiceId,
  recorder: PartId,
  taken: ReadonlySet<string>,
): string {
  const homes = leadHomes(day);
  const lead =
    leadOf(day.rig, links, from, recorder, homes) ?? leadOf(day.rig, day.tail, from, recorder, homes);
  if (lead && !taken.has(lead.id)) return lead.id;
  return newLeadId(from, recorder, { homes, links: [links, day.tail], taken });
}

export interface PlugPlacing extends Placing {
  /** At which recorder a lead is pulled; the main one if it is left out. */
  readonly recorder?: PartId | undefined;
}

/**
 * Plugs outputs or hardline voices into inputs one to one, in order: a snake, a network route. Each moves at
 * the recorder of its input, and stays at the others.
 */
export function plugRun(
  day: Day,
  from: readonly (PartId | VoiceId)[],
  inputs: readonly (PartId | null)[],
  position: SelectorPosition = 'a',
  at: PlugPlacing = {},
): CommandResult {
  const count = Math.min(from.length, inputs.length);
  if (count === 0) return fail({ code: 'block-empty' });
  const { links, main } = answersBefore(day, at.before);
  const pulledAt = at.recorder ?? recordsAs(day.rig, main.recorder);
  const taken = new Set<string>();
  const plugged = new Set<string>();
  const moves: { lead: string; from: string; to: PartId | null; position: SelectorPosition }[] = [];
  for (const [place, source] of from.slice(0, count).entries()) {
    const to = inputs[place]!;
    const input = to === null ? undefined : day.rig.byId.get(to);
    const recorder = input ? recorderOfPart(input) : pulledAt;
    const end = JSON.stringify([source, recorder]);
    if (plugged.has(end)) return twiceInOne(day, source);
    plugged.add(end);
    const lead = leadFor(day, links, source, recorder, taken);
    taken.add(lead);
    moves.push({ lead, from: source, to, position });
  }
  for (const { from: source, to } of moves) {
    if (!day.rig.byId.has(source) && !day.voices.has(source)) return missing('output', source);
    if (to !== null && day.rig.byId.get(to)?.type !== 'input') return missing('input', to);
    const kept = day.rig.byId.get(source)?.reserved;
    if (to !== null && kept)
      return fail({ code: 'output-reserved', name: day.rig.byId.get(source)!.name, kept });
  }
  return ok([placed({ kind: 'leads-plugged', leads: moves }, at)]);
}

/** A lead has two ends: to go into two inputs of one recorder it would have to be split. */
const twiceInOne = (day: Day, source: PartId | VoiceId): CommandResult =>
  fail({ code: 'lead-in-two', name: day.rig.byId.get(source)?.name ?? voiceName(day, source) });

/**
 * Exchanges where the leads of two hardline voices go, each with the tracks that its input feeds; on every
 * recorder that both are plugged into.
 */
export function swapLeads(day: Day, one: VoiceId, other: VoiceId, at: Placing = {}): CommandResult {
  const unknown = [one, other].find((id) => !day.voices.has(id));
  if (unknown !== undefined) return missing('voice', unknown);
  const { links } = answersBefore(day, at.before);
  const leads = recorderIds(day.rig).flatMap((recorder) => {
    const [own, others] = [one, other].map((from) => leadOf(day.rig, links, from, recorder));
    const [here, there] = [own?.link.value, others?.link.value];
    if (!own || !others || !here?.to || !there?.to) return [];
    return [
      { lead: own.id, from: one, to: there.to, position: there.position },
      { lead: others.id, from: other, to: here.to, position: here.position },
    ];
  });
  if (leads.length === 0) return fail({ code: 'block-empty' });
  return ok([placed({ kind: 'leads-plugged', leads }, at)]);
}

/** Outputs of a receiver, or of one of its modules, open to voices, in reading order. */
export const outputsFor = (rig: Rig, receiver: PartId, module?: string): Part[] =>
  rig.outputs.filter(
    (output) =>
      output.receiver === receiver &&
      !output.reserved &&
      (output.carries?.length ?? 0) > 0 &&
      (module === undefined || output.module === module),
  );

/** Inputs of its recorder from this one on that share its kind and are not reserved, in reading order. */
export function inputsFrom(rig: Rig, first: PartId): Part[] {
  const input = rig.inputs.find(({ id }) => id === first);
  if (!input) return [];
  const { inputs } = ownPartsOf(rig, recorderOfPart(input));
  return inputs
    .slice(inputs.indexOf(input))
    .filter(({ inputKind, reserved }) => inputKind === input.inputKind && !reserved);
}

/** The first free input that fits such outputs; else the first free one, else the first. */
export function likelyInput(
  answers: Pick<Answers, 'inputs'>,
  kind: Open<OutputKind> | undefined,
): PartId | undefined {
  const free = answers.inputs.filter(({ state }) => state === 'free').map(({ input }) => input);
  const fitting = inputsFitting(kind).flatMap(
    (socket) => free.find(({ inputKind }) => inputKind === socket) ?? [],
  );
  return (fitting[0] ?? free[0] ?? answers.inputs[0]?.input)?.id;
}

/** Pairs two lists one to one, and returns what is left of the first. */
export function pairUp<A, B>(
  first: readonly A[],
  second: readonly B[],
): { readonly pairs: readonly (readonly [A, B])[]; readonly left: readonly A[] } {
  const count = Math.min(first.length, second.length);
  return {
    pairs: first.slice(0, count).map((one, at) => [one, second[at]!] as const),
    left: first.slice(count),
  };
}
