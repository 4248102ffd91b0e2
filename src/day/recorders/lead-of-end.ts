import { leadsOf, type PluggedLead } from '../chain/leads.ts';
import { key, type LinkReader } from '../chain/links.ts';
import type { Lead, Links, PartId, Rig, VoiceId } from '../model.ts';
import { leadsAt } from './recorder-leads.ts';

/** The lead of an end at a recorder, a plugged one first; else one that was pulled. */
export const leadOf = (
  rig: Rig,
  links: Links,
  from: PartId | VoiceId,
  recorder: PartId,
): PluggedLead | undefined =>
  leadsAt(
    rig,
    [...leadsOf(rig, links)].filter(({ link }) => link.value.from === from),
    recorder,
  ).toSorted((a, b) => Number(b.link.value.to !== null) - Number(a.link.value.to !== null))[0];

const LONGEST_ID = 64;

/** Enough for a lead to every recorder that can roll at once, and one that was pulled. */
const MOST_LEADS = 17;

/** The ids that the leads of an end get, in this order. */
export const leadIds = (end: string): string[] =>
  Array.from({ length: MOST_LEADS }, (_, at) => `lead${at === 0 ? '' : at + 1}-${end}`).filter(
    (id) => id.length <= LONGEST_ID,
  );

/** The id of a new lead: named after its end, unless a lead elsewhere has that name, or is `taken`. */
export const newLeadId = (
  end: string,
  taken: ReadonlySet<string>,
  ...known: readonly LinkReader[]
): string => {
  const isFree = (links: LinkReader, id: string): boolean =>
    ((links.get(key.lead(id))?.value as Lead | undefined)?.from ?? null) === null;
  return leadIds(end).find((id) => !taken.has(id) && known.every((links) => isFree(links, id))) ?? end;
};
