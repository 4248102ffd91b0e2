import type { PartId, Rig } from '../model.ts';

const remembered = new WeakMap<Rig, ReadonlyMap<PartId, readonly PartId[]>>();

/** The outputs that a receiver channel comes out of for voices, in rig order: the same wherever on the line. */
export function outputsOf(rig: Rig, channel: PartId): readonly PartId[] {
  const known = remembered.get(rig) ?? outputsByChannel(rig);
  remembered.set(rig, known);
  return known.get(channel) ?? [];
}

function outputsByChannel({ outputs }: Rig): Map<PartId, PartId[]> {
  const found = new Map<PartId, PartId[]>();
  for (const { id, reserved, carries = [] } of outputs) {
    if (reserved) continue;
    for (const channel of new Set(carries)) found.set(channel, [...(found.get(channel) ?? []), id]);
  }
  return found;
}
