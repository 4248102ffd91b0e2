import { type Answers, answersBefore } from '../../day/answers/answers.ts';
import { leadsOf, type PluggedLead } from '../../day/chain/leads.ts';
import type { Day, Links, Part, PartId, Rig, SelectorPosition, VoiceId } from '../../day/model.ts';
import { inputsFitting, type OutputKind } from '../../facts/kinds/rig-kinds.ts';
import type { Open } from '../../shared/open-word.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing, type Placing, placed } from '../command.ts';
import { idAfter } from './part-names.ts';

/** The lead from an output or a hardline voice, if any, preferring a plugged one. */
export function leadFrom(rig: Rig, links: Links, from: PartId | VoiceId): PluggedLead | undefined {
  return [...leadsOf(rig, links)]
    .filter(({ link }) => link.value.from === from)
    .sort((a, b) => Number(b.link.value.to !== null) - Number(a.link.value.to !== null))[0];
}

/**
 * The lead of an output or a hardline voice: the one it has there or, earlier on the line, the one it
 * gets later, since an output has one lead all day.
 */
function leadFor({ rig, tail }: Day, links: Links, from: PartId | VoiceId): string {
  return (leadFrom(rig, links, from) ?? leadFrom(rig, tail, from))?.id ?? idAfter('lead', from);
}

/** Plugs outputs or hardline voices into inputs one to one, in order: a snake, a network route. */
export function plugRun(
  day: Day,
  from: readonly (PartId | VoiceId)[],
  inputs: readonly (PartId | null)[],
  position: SelectorPosition = 'a',
  at: Placing = {},
): CommandResult {
  const count = Math.min(from.length, inputs.length);
  if (count === 0) return fail({ code: 'block-empty' });
  const { links } = answersBefore(day, at.before);
  const moves = from.slice(0, count).map((source, place) => ({
    lead: leadFor(day, links, source),
    from: source,
    to: inputs[place]!,
    position,
  }));
  for (const { from: source, to } of moves) {
    if (!day.rig.byId.has(source) && !day.voices.has(source)) return missing('output', source);
    if (to !== null && day.rig.byId.get(to)?.type !== 'input') return missing('input', to);
    const kept = day.rig.byId.get(source)?.reserved;
    if (to !== null && kept)
      return fail({ code: 'output-reserved', name: day.rig.byId.get(source)!.name, kept });
  }
  return ok([placed({ kind: 'leads-plugged', leads: moves }, at)]);
}

/** Exchanges where the leads of two hardline voices go, each with the tracks that its input feeds. */
export function swapLeads(day: Day, one: VoiceId, other: VoiceId, at: Placing = {}): CommandResult {
  const unknown = [one, other].find((id) => !day.voices.has(id));
  if (unknown !== undefined) return missing('voice', unknown);
  const { links } = answersBefore(day, at.before);
  const goesWhere = (from: VoiceId) => leadFrom(day.rig, links, from)?.link.value;
  const leads = [
    { from: one, there: goesWhere(other) },
    { from: other, there: goesWhere(one) },
  ].flatMap(({ from, there }) =>
    there?.to ? [{ lead: leadFor(day, links, from), from, to: there.to, position: there.position }] : [],
  );
  if (leads.length < 2) return fail({ code: 'block-empty' });
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

/** Inputs from this one on that share its kind and are not reserved, in reading order. */
export function inputsFrom(rig: Rig, first: PartId): Part[] {
  const at = rig.inputs.findIndex(({ id }) => id === first);
  const kind = rig.inputs[at]?.inputKind;
  return at < 0 ? [] : rig.inputs.slice(at).filter((input) => input.inputKind === kind && !input.reserved);
}

/** The first free input that fits such outputs; else the first free one, else the first. */
export function likelyInput(answers: Answers, kind: Open<OutputKind> | undefined): PartId | undefined {
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
