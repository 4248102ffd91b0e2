import type { Day } from '../../day/model.ts';
import { newIds } from '../../day/new-ids.ts';
import type { Draft } from '../../facts/fact.ts';
import type { PartFields } from '../../facts/kinds/part-described.ts';

/** Maps old ids to new ones. */
type Rename = <Id extends string | null>(id: Id) => Id;

const renaming =
  (names: ReadonlyMap<string, string>): Rename =>
  (id) =>
    (names.get(id ?? '') ?? id) as typeof id;

/**
 * A rig's drafts with new ids, never used on this day, for its parts and leads. Voices keep theirs: a boom is
 * the same boom on another rig. So do parts under `known`, which are on the day already.
 */
export function underNewIds(
  day: Day,
  drafts: readonly Draft[],
  known: ReadonlyMap<string, string> = new Map(),
): Draft[] {
  const newId = newIds(day);
  const parts = new Map<string, string>(known);
  const leads = new Map<string, string>();
  const name = (names: Map<string, string>, id: string): void => {
    if (!names.has(id)) names.set(id, newId(id));
  };
  for (const draft of drafts) {
    if (draft.kind === 'rig-laid') for (const { part } of draft.parts) name(parts, part);
    if (draft.kind === 'leads-plugged') for (const { lead } of draft.leads) name(leads, lead);
  }
  return drafts.map((draft) => renamed(draft, renaming(parts), renaming(leads)));
}

function renamed(draft: Draft, part: Rename, lead: Rename): Draft {
  switch (draft.kind) {
    case 'rig-laid':
      return {
        ...draft,
        parts: draft.parts.map((one) => ({ part: part(one.part), fields: renamedIn(one.fields, part) })),
      };
    case 'leads-plugged':
      return {
        ...draft,
        leads: draft.leads.map((one) => ({
          ...one,
          lead: lead(one.lead),
          from: part(one.from),
          to: part(one.to),
        })),
      };
    case 'channels-tuned':
      return {
        ...draft,
        tunings: draft.tunings.map((one) => ({
          channel: part(one.channel),
          transmitter: part(one.transmitter),
        })),
      };
    case 'inputs-sent':
      return {
        ...draft,
        routes: draft.routes.map(({ input, tracks }) => ({
          input: part(input),
          tracks: tracks.map((track) => part(track)),
        })),
      };
    case 'recorders-rolling':
      return { ...draft, recorders: draft.recorders.map((recorder) => part(recorder)) };
    case 'selectors-thrown':
      return { ...draft, selectors: draft.selectors.map((selector) => part(selector)) };
    case 'gang-declared':
      return { ...draft, track: part(draft.track), sources: draft.sources.map((source) => part(source)) };
    default:
      return draft;
  }
}

/** Other parts that a part refers to: its recorder, its receiver, the channels it carries, the input it is before. */
const renamedIn = (fields: PartFields, part: Rename): PartFields => ({
  ...fields,
  ...(fields.recorder !== undefined && { recorder: part(fields.recorder) }),
  ...(fields.receiver !== undefined && { receiver: part(fields.receiver) }),
  ...(fields.carries && { carries: fields.carries.map((channel) => part(channel)) }),
  ...(fields.input !== undefined && { input: part(fields.input) }),
});
