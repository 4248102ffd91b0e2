import { tunedTo } from '../chain/links.ts';
import type { Part, PartId, Rig } from '../model.ts';
import type { Answers } from './answers.ts';
import { rolledInputs } from './rolled-parts.ts';

/** The channels a pack is received on, and the tracks that whoever wears it is on, muted or not. */
export interface PackReach {
  readonly channels: readonly Part[];
  readonly tracks: readonly Part[];
}

const NOWHERE: PackReach = { channels: [], tracks: [] };

/** Where each pack arrives on the recorders that roll, worn or not; `NOWHERE` for one that no channel is tuned to. */
export function packReach(rig: Rig, answers: Answers): (transmitter: PartId) => PackReach {
  const { links } = answers;
  const found = new Map<PartId, { channels: Part[]; tracks: Set<PartId> }>();
  for (const channel of rig.channels) {
    const pack = tunedTo(links, channel.id)?.value;
    if (!pack) continue;
    const reach = found.get(pack) ?? { channels: [], tracks: new Set<PartId>() };
    reach.channels.push(channel);
    found.set(pack, reach);
  }
  for (const { reach } of rolledInputs(answers))
    for (const { transmitter } of reach.arrival?.sources ?? [])
      for (const track of reach.tracks) if (transmitter) found.get(transmitter)?.tracks.add(track);
  return (transmitter) => {
    const reach = found.get(transmitter);
    if (!reach) return NOWHERE;
    return { channels: reach.channels, tracks: rig.tracks.filter(({ id }) => reach.tracks.has(id)) };
  };
}
