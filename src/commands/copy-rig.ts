import type { Day } from '../day/model.ts';
import type { Draft } from '../facts/fact.ts';
import { fail, ok } from '../shared/result.ts';
import type { Said } from './command.ts';
import { rigOf } from './start-day.ts';

/**
 * The rig of another day as it stood at its end, laid on this one. Booms, plants and feeds that were on a lead come
 * with it, unless this day knows them; who wore a pack does not.
 */
export function copyRig(from: Day, onto: Day): Said {
  const drafts = rigOf(from);
  if (from.rig.byId.size === 0) return fail({ code: 'rig-empty' });
  const plugged = new Set(
    drafts.flatMap((draft) => (draft.kind === 'leads-plugged' ? draft.leads.map((lead) => lead.from) : [])),
  );
  const hardlines = [...from.voices.values()]
    .filter(({ id, struck }) => plugged.has(id) && !struck && !onto.voices.has(id))
    .map(({ id, ...fields }): Draft => ({ kind: 'voice-described', voice: id, fields }));
  return ok(standingAgain(onto, [...hardlines, ...drafts]));
}

/** The same, with every part that was struck on this day standing again. */
export const standingAgain = (day: Day, drafts: readonly Draft[]): Draft[] => {
  const laidBefore = day.facts.some(({ kind }) => kind === 'rig-laid' || kind === 'part-described');
  if (!laidBefore) return [...drafts];
  return drafts.map((draft) =>
    draft.kind === 'rig-laid'
      ? {
          ...draft,
          parts: draft.parts.map(({ part, fields }) => ({ part, fields: { ...fields, struck: false } })),
        }
      : draft,
  );
};

/** Lays a rig on a day; what was struck before and is laid again stands again. */
export const layOn = (day: Day, said: Said): Said => (said.ok ? ok(standingAgain(day, said.value)) : said);
