import { isHardline } from '../../day/cast-in-order.ts';
import { leadsOf, type PluggedLead } from '../../day/chain/leads.ts';
import { outAt } from '../../day/chain/links.ts';
import type { Day, Lead, Links, Part, PartId, SelectorPosition, VoiceId } from '../../day/model.ts';
import { type LeadHomes, leadAmong, leadHomes, newLeadId } from '../../day/recorders/lead-of-end.ts';
import { inputsOf } from '../../day/recorders/recorder-parts.ts';
import {
  INPUT_KINDS,
  type InputKind,
  inputOf,
  inputsFitting,
  outputOf,
} from '../../facts/kinds/rig-kinds.ts';
import { isOneOf } from '../../shared/open-word.ts';
import type { PlanPath } from '../plan-problem.ts';

const HARDLINE_FITS = INPUT_KINDS.filter((kind) => inputOf(kind)?.hardline === 'planned');
const fitsOf = (kind: string | undefined): readonly InputKind[] =>
  outputOf(kind)?.canMove ? inputsFitting(kind) : [];

/** An output or a hardline voice, with what comes out of it and its lead. */
interface End {
  readonly from: PartId | VoiceId;
  readonly source: string;
  readonly fits: readonly InputKind[];
  readonly lead: string;
  /** Where that lead is plugged now. */
  readonly at: Lead | undefined;
  readonly out: boolean;
}

/** Every route from a source to an input: as plugged now, and wherever its lead could go instead. */
export const planPaths = (day: Day, links: Links, recorder: PartId): PlanPath[] =>
  endsOf(day, links, recorder).flatMap((end) =>
    inputsOf(day.rig, recorder).flatMap((input) => waysInto(day, input, end)),
  );

function endsOf(day: Day, links: Links, recorder: PartId): End[] {
  const homes = leadHomes(day);
  const leads = leadsTo(day, links, recorder, homes);
  const endOf = (from: string, source: string, fits: readonly InputKind[]): End => {
    const known = leads.get(from);
    const lead = known?.id ?? newLeadId(from, recorder, { homes, links: [links] });
    const out = isOut(links, lead) || isOut(links, from);
    return { from, source, fits, lead, at: known?.link.value, out };
  };
  const ends: End[] = [];
  for (const { id, carries = [], reserved, outputKind } of day.rig.outputs) {
    // An output of two channels carries both at once; only the first can be planned for one voice.
    if (!reserved && carries[0]) ends.push(endOf(id, carries[0], fitsOf(outputKind)));
  }
  for (const { id, kind, struck } of day.voices.values()) {
    if (!struck && (isHardline(kind) || leads.has(id))) ends.push(endOf(id, id, HARDLINE_FITS));
  }
  return ends;
}

/** Every end with a lead, and its lead to a recorder. Of two there, the plugged one counts. */
function leadsTo(
  { rig }: Day,
  links: Links,
  recorder: PartId,
  homes: LeadHomes,
): ReadonlyMap<string, PluggedLead | undefined> {
  const ofEnds = new Map<string, PluggedLead[]>();
  for (const lead of leadsOf(rig, links)) {
    const { from } = lead.link.value;
    if (from) ofEnds.set(from, [...(ofEnds.get(from) ?? []), lead]);
  }
  return new Map([...ofEnds].map(([end, own]) => [end, leadAmong(rig, own, recorder, homes)]));
}

export const isOut = (links: Links, part: string): boolean => outAt(links, part)?.value ?? false;

function waysInto({ rig }: Day, input: Part, { from, lead, source, fits, at, out }: End): PlanPath[] {
  const selector = rig.selectors.findLast((one) => one.input === input.id);
  const positions = selector ? (['a', 'b'] as const) : (['a'] as const);
  return positions.flatMap((position) => {
    const isThere = at?.to === input.id && (!selector || at.position === position);
    if (!isThere && !(input.inputKind && isOneOf(fits, input.inputKind))) return [];
    return {
      id: pathId({ lead, from, input: input.id, position }),
      source,
      input: input.id,
      lead,
      plugged: isThere,
      out,
      ...(selector && { selector: { id: selector.id, position } }),
    };
  });
}

interface PathEnds {
  readonly lead: string;
  readonly from: PartId | VoiceId;
  readonly input: PartId;
  readonly position: SelectorPosition;
}

const pathId = ({ lead, from, input, position }: PathEnds): string =>
  JSON.stringify([lead, from, input, position]);

/** The ends of a path, from the id that `problemOf` gave it. */
export function pathEnds(id: string): PathEnds {
  const [lead, from, input, position] = JSON.parse(id) as [string, string, string, SelectorPosition];
  return { lead, from, input, position };
}
