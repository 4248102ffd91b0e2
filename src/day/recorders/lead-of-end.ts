import { leadsOf, type PluggedLead } from '../chain/leads.ts';
import { key, type LinkReader } from '../chain/links.ts';
import type { Day, Lead, Links, PartId, Rig, VoiceId } from '../model.ts';
import { recorderOfPart } from '../recorder-of-part.ts';
import { recorderOfLead } from './recorder-leads.ts';

/** The recorder that each lead belongs to, by id. */
export type LeadHomes = ReadonlyMap<string, PartId>;

const NO_HOMES: LeadHomes = new Map();

const remembered = new WeakMap<Day, LeadHomes>();

/**
 * A lead belongs to the recorder that it was first plugged into, though that is taken back since: so it is the
 * same lead wherever on the line it is asked for.
 */
export function leadHomes(day: Day): LeadHomes {
  const known = remembered.get(day);
  if (known) return known;
  const homes = new Map<string, PartId>();
  for (const fact of day.facts) {
    if (fact.kind !== 'leads-plugged') continue;
    for (const { lead, to } of fact.leads) {
      const input = day.rig.byId.get(to ?? '');
      if (input && !homes.has(lead)) homes.set(lead, recorderOfPart(input));
    }
  }
  remembered.set(day, homes);
  return homes;
}

/**
 * The lead of an end at a recorder, a plugged one first; else one that hangs and belongs there, or of which
 * nothing is known.
 */
export function leadOf(
  rig: Rig,
  links: Links,
  from: PartId | VoiceId,
  recorder: PartId,
  homes: LeadHomes = NO_HOMES,
): PluggedLead | undefined {
  const leads = [...leadsOf(rig, links)].filter(({ link }) => link.value.from === from);
  return leadAmong(rig, leads, recorder, homes);
}

/** The same of these leads, which are all of one end. */
export function leadAmong(
  rig: Pick<Rig, 'byId'>,
  leads: readonly PluggedLead[],
  recorder: PartId,
  homes: LeadHomes,
): PluggedLead | undefined {
  const there = leads.filter((lead) => recorderOfLead(rig, lead) === recorder);
  if (there.length > 0) return there.find(({ link }) => link.value.to !== null) ?? there[0];
  return leads.find(
    (lead) => recorderOfLead(rig, lead) === undefined && (homes.get(lead.id) ?? recorder) === recorder,
  );
}

const LONGEST_ID = 64;

/** Enough for a lead to every recorder that can roll at once. */
const MOST_LEADS = 17;

/** The ids that the leads of an end get, in this order. */
export const leadIds = (end: string): string[] =>
  Array.from({ length: MOST_LEADS }, (_, at) => `lead${at === 0 ? '' : at + 1}-${end}`).filter(
    (id) => id.length <= LONGEST_ID,
  );

/** What a new lead must be told from. */
export interface KnownLeads {
  readonly homes: LeadHomes;
  /** Those at places on the line. */
  readonly links: readonly LinkReader[];
  readonly taken?: ReadonlySet<string>;
}

/** The id of a new lead to a recorder: named after its end, unless a lead elsewhere has that name. */
export function newLeadId(end: string, recorder: PartId, { homes, links, taken }: KnownLeads): string {
  const hasEnd = (id: string): boolean =>
    links.some((some) => ((some.get(key.lead(id))?.value as Lead | undefined)?.from ?? null) !== null);
  const isFree = (id: string): boolean =>
    !taken?.has(id) && (homes.get(id) ?? recorder) === recorder && !hasEnd(id);
  return leadIds(end).find(isFree) ?? end;
}
