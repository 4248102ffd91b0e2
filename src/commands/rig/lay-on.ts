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
 * Puts a rig on a day. If one was removed before, the new one starts fresh: its parts and leads get ids never
 * used on this day, and traces of the old rig on the cast are cleared. A hardline already in the cast keeps
 * its spelling.
 */
export function layOn(day: Day, said: CommandResult): CommandResult {
  if (!said.ok) return said;
  const drafts = said.value.flatMap((draft) => hardlineOn(day, draft));
  return ok([...leftovers(day), ...underNewIds(day, drafts)]);
}

/** A voice that comes with a rig, if this day does not have it; one removed from the cast returns. */
function hardlineOn(day: Day, draft: Draft): Draft[] {
  const known = draft.kind === 'voice-described' ? day.voices.get(draft.voice) : undefined;
  if (draft.kind !== 'voice-described' || !known) return [draft];
  return known.struck ? [{ ...draft, fields: { ...draft.fields, struck: false } }] : [];
}

/** Clears what a removed rig left where no part's id separates it: on voices, and on the whole day. */
function leftovers(day: Day): Draft[] {
  if (!isStruck(day)) return [];
  return [...pulledLeads(day), ...pinsWithout(day, () => true), ...plainCosts(day), ...goneRanges(day)];
}

/** Whether there was a rig that was removed: what was prepared before any rig is for the first one. */
const isStruck = ({ rig, facts, takenBack }: Day): boolean =>
  rig.byId.size === 0 && facts.some(({ id, kind }) => kind === 'rig-laid' && !takenBack.has(id));

/** Unplugs hardlines, which stay; a fault marked on the old lead does not apply to the next. */
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

/** Resets the cost of moves, which belonged to the old rig. */
function plainCosts(day: Day): Draft[] {
  const said = weightsIn(answersNow(day).links)?.value ?? {};
  return Object.keys(said).length > 0 ? [{ kind: 'moves-weighed', weights: {} }] : [];
}

/** Tuning ranges apply to packs by the letters before their number, which new packs may share. */
const goneRanges = ({ upkeep }: Day): Draft[] =>
  [...upkeep.bands]
    .filter(([, { use, struck }]) => use === 'tunable' && !struck)
    .map(([band]) => ({ kind: 'band-described', band, fields: { struck: true } }));
