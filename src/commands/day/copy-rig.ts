import type { Day } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';
import { fail, ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';
import { layOn } from '../rig/lay-on.ts';
import { isSameProduction, rigOf } from './start-day.ts';

/**
 * Copies another day's final rig onto this one. Booms, plants and feeds that were plugged in come along, without
 * who held them and where they were if it is a day of another production; wearers of packs do not.
 */
export function copyRig(from: Day, onto: Day): CommandResult {
  if (from.rig.byId.size === 0) return fail({ code: 'rig-empty' });
  const drafts = rigOf(from);
  const plugged = new Set(
    drafts.flatMap((draft) => (draft.kind === 'leads-plugged' ? draft.leads.map((lead) => lead.from) : [])),
  );
  const hardlines = [...from.voices.values()]
    .filter(({ id, struck }) => plugged.has(id) && !struck)
    .map(({ id, person, place, ...fields }): Draft => {
      const own = isSameProduction(from.header, onto.header) ? { person, place } : {};
      return { kind: 'voice-described', voice: id, fields: { ...fields, ...own } };
    });
  return layOn(onto, ok([...hardlines, ...drafts]));
}
