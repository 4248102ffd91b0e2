import { answersNow } from '../../day/answers/answers.ts';
import { leadsOf } from '../../day/chain/leads.ts';
import { outAt, weightsIn } from '../../day/chain/links.ts';
import type { Day } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';
import { ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';
import { pinsWithout } from './not-struck.ts';
import { underNewIds } from './under-new-ids.ts';

/**
 * Lays a rig on a day. Where one was struck before, the new one answers as on an empty day: its parts and leads have ids
 * that this day never had, and what the old rig left on the cast goes. A hardline that is on the cast is not respelled.
 */
export function layOn(day: Day, said: CommandResult): CommandResult {
  if (!said.ok) return said;
  const drafts = said.value.flatMap((draft) => hardlineOn(day, draft));
  return ok([...leftovers(day), ...underNewIds(day, drafts)]);
}

/** A voice that a rig brings along, where this day does not have it already; one struck off the cast is back. */
function hardlineOn(day: Day, draft: Draft): Draft[] {
  const known = draft.kind === 'voice-described' ? day.voices.get(draft.voice) : undefined;
  if (draft.kind !== 'voice-described' || !known) return [draft];
  return known.struck ? [{ ...draft, fields: { ...draft.fields, struck: false } }] : [];
}

/** Ends what a rig that is gone has left where no id of a part keeps it apart: on voices, and on the whole day. */
function leftovers(day: Day): Draft[] {
  if (!isStruck(day)) return [];
  return [...pulledLeads(day), ...pinsWithout(day, () => true), ...plainCosts(day), ...goneRanges(day)];
}

/** Whether a rig was laid here and none of it stands: what was prepared before any rig is for the first one. */
const isStruck = ({ rig, facts, takenBack }: Day): boolean =>
  rig.byId.size === 0 && facts.some(({ id, kind }) => kind === 'rig-laid' && !takenBack.has(id));

/** A hardline stays, so its lead is pulled; a fault marked on that lead is not one of the next. */
function pulledLeads(day: Day): Draft[] {
  const { links } = answersNow(day);
  const old = [...leadsOf(day.rig, links)].filter(
    ({ link: { value } }) => value.from && day.voices.has(value.from),
  );
  const leads = old.map(({ id }) => ({ lead: id, from: null, to: null }));
  const dead = old.filter(({ id }) => outAt(links, id)?.value);
  return [
    ...(leads.length > 0 ? [{ kind: 'leads-plugged' as const, leads }] : []),
    ...dead.map(({ id }): Draft => ({ kind: 'out-marked', part: id, out: false })),
  ];
}

/** What moves cost was said of a rig. */
function plainCosts(day: Day): Draft[] {
  const said = weightsIn(answersNow(day).links)?.value ?? {};
  return Object.keys(said).length > 0 ? [{ kind: 'moves-weighed', weights: {} }] : [];
}

/** Where packs can be tuned is said of them by the letters before their number, which other packs may bear. */
const goneRanges = ({ upkeep }: Day): Draft[] =>
  [...upkeep.bands]
    .filter(([, { use, struck }]) => use === 'tunable' && !struck)
    .map(([band]) => ({ kind: 'band-described', band, fields: { struck: true } }));
