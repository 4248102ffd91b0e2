import { foldDay } from '../../day/fold/fold.ts';
import type { Day, PartFields, PartId } from '../../day/model.ts';
import { newIds } from '../../day/new-ids.ts';
import { recordsAs } from '../../day/recorders/recorder-ids.ts';
import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import { stampFacts } from '../../facts/stamp.ts';
import { idSource } from '../../shared/ids.ts';
import { fail, ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';
import { laid, nextOrder, type SaidPart } from '../rig/lay-rig.ts';
import { freeNames, nameProblem } from '../rig/part-names.ts';
import { underNewIds } from '../rig/under-new-ids.ts';
import { type Bringing, broughtBy } from './rig-beside.ts';
import { rigOf } from './start-day.ts';

export interface Beside {
  /** What the second recorder is called. */
  readonly name: string;
  readonly receivers?: Bringing;
}

/**
 * Lays a rig beside what is there: its inputs, tracks and sends belong to a new recorder, which stands by until
 * it rolls. Packs and receivers of one name are the same ones and there once; what both recorders get from a
 * receiver goes to the new one by second leads.
 */
export function layBeside(day: Day, said: CommandResult, beside: Beside): CommandResult {
  if (!said.ok) return said;
  const saying = { day: 'scratch', at: 0, zone: 0, nextId: idSource('layinglayin').next };
  return layRigBeside(day, foldDay('scratch', stampFacts(said.value, saying)), beside);
}

/** The same with the rig of a recorder of another day, the first one's if none is named. */
export function layRigBeside(
  day: Day,
  from: Day,
  { name, receivers = 'own' }: Beside,
  recorder: PartId = FIRST_RECORDER,
): CommandResult {
  const wrong = nameProblem(day, { type: 'recorder', name });
  if (wrong) return wrong;
  if (recordsAs(from.rig, recorder) !== recorder || from.rig.tracks.length === 0)
    return fail({ code: 'rig-empty' });
  const part = newIds(day)('recorder.2');
  const { drafts, same } = broughtBy(day, from, recorder, receivers);
  const renamed = underNewIds(day, drafts(rigOf(from)), new Map([...same, [recorder, part]]));
  const order = nextOrder(day);
  const parts = renamed.flatMap((draft) => (draft.kind === 'rig-laid' ? draft.parts : []));
  const own = selectorsNumberedOn(day, parts).map((one, at) => ({
    part: one.part,
    fields: { ...ofRecorder(one.fields, part), order: order + 1 + at },
  }));
  return ok([
    laid([{ part, fields: { type: 'recorder', name: name.trim(), order } }, ...own]),
    ...renamed.filter(({ kind }) => kind !== 'rig-laid'),
  ]);
}

const OF_A_RECORDER: readonly PartFields['type'][] = ['input', 'track', 'send'];

const ofRecorder = (fields: PartFields, recorder: PartId): PartFields =>
  OF_A_RECORDER.includes(fields.type) ? { ...fields, recorder } : fields;

/** Selectors and their banks are numbered on, as those added to a rig are. */
function selectorsNumberedOn(day: Day, parts: readonly SaidPart[]): SaidPart[] {
  const selectors = parts.filter(({ fields }) => fields.type === 'selector');
  const names = freeNames(day, 'selector', 'selector', selectors.length);
  const known = new Set(day.rig.selectors.map(({ bank }) => bank)).size;
  const banks = [...new Set(selectors.map(({ fields }) => fields.bank))];
  return parts.map(({ part, fields }) => {
    const at = selectors.findIndex((one) => one.part === part);
    if (at < 0) return { part, fields };
    const bank = `bank ${known + banks.indexOf(fields.bank) + 1}`;
    return { part, fields: { ...fields, name: names[at]!, bank } };
  });
}
