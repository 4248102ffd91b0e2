import type { Day, PartId } from '../day/model.ts';
import { recordsAs } from '../day/recorders/recorder-ids.ts';
import { tracksOf } from '../day/recorders/recorder-parts.ts';
import { recordersOf } from '../day/recorders/rolling.ts';
import { cleanLine } from './clean-text.ts';
import type { TakeLine } from './take-lines.ts';
import { type TrackLayout, trackLayoutOf } from './track-layout.ts';

/** The tracks of one recorder all day, and of backups that record the same. */
export interface TrackList {
  readonly owner: PartId;
  /** As above, of the whole day. */
  readonly on: readonly string[];
  /** The takes on it, which the layout counts. */
  readonly takes: readonly TakeLine[];
  readonly layout: readonly TrackLayout[];
}

/** The track lists of the day: of recorders that have a take, or of all before there is one. */
export function trackListsOf(day: Day, takes: readonly TakeLine[], form: number): TrackList[] {
  const rolled = new Set(takes.flatMap(({ recorders }) => recorders.map(({ id }) => id)));
  const recorders = recordersOf(day).filter(({ id }) => rolled.size === 0 || rolled.has(id));
  const ownerOf = ({ id }: { readonly id: PartId }): PartId => recordsAs(day.rig, id);
  const owners = [...new Set(recorders.map(ownerOf))];
  return owners.map((owner, at) => {
    const isOnly = owners.length === 1;
    const isOn = ({ kind, lists }: TakeLine): boolean =>
      kind === 'mos' ? at === 0 : lists.some((list) => list.owner === owner);
    const own = isOnly ? takes : takes.filter(isOn);
    const on = isOnly ? [] : recorders.filter((one) => ownerOf(one) === owner);
    return {
      owner,
      on: on.map(({ name }) => cleanLine(name)),
      takes: own,
      layout: trackLayoutOf(day, tracksOf(day.rig, owner), own, form),
    };
  });
}
