import type { PluggedLead } from '../chain/leads.ts';
import type { PartId, Rig } from '../model.ts';
import { recorderOfPart } from '../recorder-of-part.ts';

// One output, or one hardline, may go to several recorders at once, by a lead to each.

/** The recorder that a lead is plugged into, or was pushed out of; undefined for one that was pulled. */
export function recorderOfLead(
  { byId }: Pick<Rig, 'byId'>,
  { link, pushedOutOf }: PluggedLead,
): PartId | undefined {
  const part = byId.get(link.value.to ?? pushedOutOf?.input ?? '');
  return part && recorderOfPart(part);
}

/** Those of an end's leads that matter to a recorder: plugged there, or else hanging. */
export function leadsAt(
  rig: Pick<Rig, 'byId'>,
  leads: readonly PluggedLead[],
  recorder: PartId,
): readonly PluggedLead[] {
  const there = leads.filter((lead) => recorderOfLead(rig, lead) === recorder);
  return there.length > 0 ? there : leads.filter((lead) => recorderOfLead(rig, lead) === undefined);
}
