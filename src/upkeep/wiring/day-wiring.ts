import { answersNow } from '../../day/answers/answers.ts';
import { voiceName } from '../../day/answers/track-answers.ts';
import { leadsOf } from '../../day/chain/leads.ts';
import { thrownTo } from '../../day/chain/links.ts';
import type { Day, Lead, Links, Part, PartId, VoiceId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { hasSeveralRigs } from '../../day/recorders/recorder-parts.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import { inputOf, outputOf } from '../../facts/kinds/rig-kinds.ts';
import { LEAD_ENDS, type LeadFields, SNAKE_SIGNALS } from '../../facts/kinds/runs-described.ts';
import { isOneOf, unknownText } from '../../shared/open-word.ts';
import type { LeadEnds, RigLead } from './wiring-sheet.ts';

/** A lead of the rig as plugged now, with what identifies it. */
export interface DayLead extends RigLead {
  readonly id: string;
  /** The output, or the hardline voice, it comes from. */
  readonly from: PartId | VoiceId;
  /** False while a selector is thrown to the other lead. */
  readonly isThrough: boolean;
  /** Where its selector is now; missing without one. */
  readonly thrownTo?: string;
}

/**
 * The leads of the rig as plugged now, recorder by recorder in the inputs' reading order, for the sheet in the lid. Leads that
 * hang free are left out; an unnamed lead is called by its number on the sheet.
 */
export function leadsOfDay(day: Day): DayLead[] {
  const { links } = answersNow(day);
  const leads = [...leadsOf(day.rig, links)].flatMap(({ id, link }) => {
    const { from, to } = link.value;
    if (from === null || to === null) return [];
    const input = day.rig.byId.get(to);
    const output = nameOfEnd(day, from);
    return input && output !== undefined ? [{ id, lead: link.value, from, input, output }] : [];
  });
  const place = new Map(day.rig.inputs.map(({ id }, at) => [id, at]));
  const recorders = recordersOf(day);
  const recorderAt = (input: Part): number => recorders.findIndex(({ id }) => id === recorderOfPart(input));
  const isSeveral = hasSeveralRigs(day);
  leads.sort(
    (a, b) =>
      recorderAt(a.input) - recorderAt(b.input) ||
      (place.get(a.input.id) ?? 0) - (place.get(b.input.id) ?? 0) ||
      (a.lead.position < b.lead.position ? -1 : 1),
  );
  return leads.map(({ id, lead, from, input, output }, at) => {
    const said = day.upkeep.leads.get(id);
    const home = isSeveral ? recorders[recorderAt(input)] : undefined;
    const selector = selectorOf(day, input);
    const now = selector && thrown(links, selector);
    return {
      id,
      from,
      isThrough: now === undefined || now === lead.position,
      output,
      lead: said?.name || String(at + 1),
      ends: endsOf(said, day.rig.byId.get(lead.from ?? ''), input),
      input: input.name,
      ...(home && { recorder: home }),
      ...(selector &&
        now && {
          selector: { name: selector.name, position: positionName(selector, lead.position) },
          thrownTo: positionName(selector, now),
        }),
    };
  });
}

function nameOfEnd(day: Day, from: string): string | undefined {
  return day.voices.has(from) ? voiceName(day, from) : day.rig.byId.get(from)?.name;
}

const selectorOf = ({ rig }: Day, input: Part): Part | undefined =>
  rig.selectors.find((one) => one.input === input.id);

const thrown = (links: Links, { id }: Part): Lead['position'] => thrownTo(links, id)?.value ?? 'a';

function positionName({ positions = ['A', 'B'] }: Part, position: Lead['position']): string {
  return position === 'a' ? positions[0] : positions[1];
}

/** How a lead is wired as described; missing descriptions are marked, and pins are not guessed. */
function endsOf(said: LeadFields | undefined, output: Part | undefined, input: Part): LeadEnds {
  if (said?.ends === 'xlr') return { kind: 'xlr' };
  const { carries = 'analogue' } = said ?? {};
  // Pins are not guessed if only a newer version knows what the circuit carries.
  if (said?.ends === 'snake' && said.circuit !== undefined)
    return isOneOf(SNAKE_SIGNALS, carries)
      ? { kind: 'snake', snake: said.snake || 'snake', circuit: said.circuit, carries }
      : { kind: 'other', words: unknownText(carries) };
  if (said?.ends && !isOneOf(LEAD_ENDS, said.ends)) return { kind: 'other', words: unknownText(said.ends) };
  if (said?.ends === 'other') return { kind: 'other', words: said.words || 'not said' };
  const follows = outputOf(output?.outputKind)?.madeOff ?? inputOf(input.inputKind)?.madeOff;
  return { kind: 'other', words: follows ?? 'not said' };
}
