import { tunedTo } from '../../day/chain/links.ts';
import type { Day, Part, PartId, Rig } from '../../day/model.ts';
import { ownPartsOf } from '../../day/recorders/recorder-parts.ts';
import type { Draft } from '../../facts/fact.ts';

/** Whether a rig brings all its receivers, or only those that belong to it: its slots, and a remote box. */
export type Bringing = 'all' | 'own';

/** What comes with the rig of one recorder that is laid beside another. */
export interface Brought {
  /** The parts that are on the day already, by their ids there. */
  readonly same: ReadonlyMap<PartId, PartId>;
  /** What of these drafts comes along. */
  readonly drafts: (drafts: readonly Draft[]) => Draft[];
}

/** Parts of the rig that come, and parts of it that are on the day already: packs and receivers of one name. */
export function broughtBy(day: Day, from: Day, recorder: PartId, bringing: Bringing): Brought {
  const { inputs, tracks, sends } = ownPartsOf(from.rig, recorder);
  const inputIds = new Set(inputs.map(({ id }) => id));
  const selectors = from.rig.selectors.filter(({ input }) => input !== undefined && inputIds.has(input));
  const same = new Map<PartId, PartId>();
  const own = new Set([...inputs, ...tracks, ...sends, ...selectors].map(({ id }) => id));
  for (const receiver of from.rig.receivers) {
    const twin = day.rig.receivers.find(({ name }) => name === receiver.name);
    if (twin) pairReceivers(same, [from.rig, receiver], [day.rig, twin]);
    else if (bringing === 'all' || isOfRecorder(from.rig, receiver))
      for (const { id } of receiverParts(from.rig, receiver)) own.add(id);
  }
  const heard = from.rig.channels.filter(({ id }) => own.has(id));
  const packs = new Set(heard.flatMap(({ id }) => tunedTo(from.tail, id)?.value ?? []));
  for (const pack of from.rig.transmitters.filter(({ id }) => packs.has(id))) {
    const twin = day.rig.transmitters.find(({ name }) => name === pack.name);
    if (twin) same.set(pack.id, twin.id);
    else own.add(pack.id);
  }
  return { same, drafts: (drafts) => drafts.flatMap((draft) => broughtOf(draft, own, same)) };
}

const receiverParts = (rig: Rig, { id }: Part): Part[] =>
  [...rig.byId.values()].filter((part) => part.id === id || part.receiver === id);

/** A receiver in the recorder itself, or one at the far end of a lead to it. */
const isOfRecorder = (rig: Rig, receiver: Part): boolean =>
  receiver.place === 'remote' ||
  rig.outputs.some((output) => output.receiver === receiver.id && output.outputKind === 'slot');

/** Channels and outputs of one name are the same; others of it stay away. */
function pairReceivers(
  same: Map<PartId, PartId>,
  [rig, receiver]: readonly [Rig, Part],
  [known, twin]: readonly [Rig, Part],
): void {
  const there = receiverParts(known, twin);
  for (const part of receiverParts(rig, receiver)) {
    const found = there.find(({ type, name }) => type === part.type && name === part.name);
    if (found) same.set(part.id, found.id);
  }
}

/** The part of a draft about what comes. What the day has already stays tuned as it is there. */
function broughtOf(draft: Draft, own: ReadonlySet<string>, same: ReadonlyMap<string, string>): Draft[] {
  const isThere = (id: string | null): boolean => id !== null && (own.has(id) || same.has(id));
  const some = <Item>(items: readonly Item[], draftOf: (kept: Item[]) => Draft): Draft[] =>
    items.length > 0 ? [draftOf([...items])] : [];
  switch (draft.kind) {
    case 'rig-laid':
      return some(
        draft.parts.filter(({ part }) => own.has(part)),
        (parts) => ({ ...draft, parts }),
      );
    case 'leads-plugged':
      return some(
        draft.leads.filter(({ from, to }) => isThere(from) && to !== null && own.has(to)),
        (leads) => ({ ...draft, leads }),
      );
    case 'channels-tuned':
      return some(
        draft.tunings.filter(({ channel }) => own.has(channel)),
        (tunings) => ({ ...draft, tunings }),
      );
    case 'inputs-sent':
      return some(
        draft.routes.filter(({ input }) => own.has(input)),
        (routes) => ({ ...draft, routes }),
      );
    case 'selectors-thrown':
      return some(
        draft.selectors.filter((selector) => own.has(selector)),
        (selectors) => ({ ...draft, selectors }),
      );
    case 'gang-declared': {
      const sources = draft.sources.filter(isThere);
      return own.has(draft.track) && sources.length > 1 ? [{ ...draft, sources }] : [];
    }
    default:
      return [];
  }
}
