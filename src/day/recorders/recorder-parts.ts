import type { Part, PartId, Rig } from '../model.ts';
import { recorderOfPart } from '../recorder-of-part.ts';
import { recordsAs } from './recorder-ids.ts';

export { recorderOfPart } from '../recorder-of-part.ts';
export { recordsAs } from './recorder-ids.ts';

/** What belongs to one recorder, each list in reading order. */
export interface RecorderParts {
  readonly inputs: readonly Part[];
  readonly tracks: readonly Part[];
  readonly sends: readonly Part[];
}

const remembered = new WeakMap<Rig, Map<PartId, RecorderParts>>();

/** The inputs, tracks and sends that belong to a recorder: none for a backup with the tracks of the first. */
export function ownPartsOf(rig: Rig, recorder: PartId): RecorderParts {
  const known = remembered.get(rig) ?? new Map<PartId, RecorderParts>();
  remembered.set(rig, known);
  const own = known.get(recorder) ?? {
    inputs: belonging(rig.inputs, recorder),
    tracks: belonging(rig.tracks, recorder),
    sends: belonging(rig.sends, recorder),
  };
  known.set(recorder, own);
  return own;
}

/** The same list if all are its own: what is remembered for a list must not be lost. */
function belonging(parts: readonly Part[], recorder: PartId): readonly Part[] {
  const own = parts.filter((part) => recorderOfPart(part) === recorder);
  return own.length === parts.length ? parts : own;
}

/** Whether a recorder besides the first has inputs or tracks of its own, so that their names alone say too little. */
export const hasSeveralRigs = ({ rig }: { readonly rig: Rig }): boolean =>
  rig.recorders.some(({ id }) => {
    const { inputs, tracks } = ownPartsOf(rig, id);
    return inputs.length + tracks.length > 0;
  });

/** The inputs through which a recorder records, its own or the first one's. */
export const inputsOf = (rig: Rig, recorder: PartId): readonly Part[] =>
  ownPartsOf(rig, recordsAs(rig, recorder)).inputs;

/** The tracks that a recorder records, its own or the first one's. */
export const tracksOf = (rig: Rig, recorder: PartId): readonly Part[] =>
  ownPartsOf(rig, recordsAs(rig, recorder)).tracks;
