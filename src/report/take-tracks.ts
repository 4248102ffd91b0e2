import type { PartId } from '../day/model.ts';
import { FIRST_RECORDER } from '../facts/kinds/recorder-set.ts';
import type { OnRecorder } from './on-recorders.ts';
import { type TrackLine, trackKey } from './track-lines.ts';

/** What the tracks of one recorder, and of backups that record the same, carry at a take. */
export interface TakeTracks {
  /** The recorder that the tracks belong to. */
  readonly owner: PartId;
  /** The recorders of the take that have them; empty if all recorders of the day have the same tracks. */
  readonly on: readonly string[];
  readonly tracks: readonly TrackLine[];
  /** The take that they are printed at, if nothing changed since: `'24A/1'`. Empty if they are printed here. */
  readonly asAt: string;
}

/** A take before its lists are known. */
interface Listed {
  readonly text: string;
  readonly kind: string;
  readonly recorders: readonly OnRecorder[];
  readonly tracks: readonly TrackLine[];
}

/**
 * The takes with their tracks by recorder. Where recorders have tracks of their own, two long lists at every take
 * would bury what changed, so each is printed where it changes.
 */
export function withTrackLists<Taken extends Listed>(
  takes: readonly Taken[],
): (Taken & { readonly lists: readonly TakeTracks[] })[] {
  const owners = new Set(takes.flatMap(({ recorders }) => recorders.map((one) => one.recordsAs)));
  if (owners.size < 2) return takes.map((take) => ({ ...take, lists: [whole(take)] }));
  const last = new Map<PartId, Pick<Taken, 'tracks' | 'text'>>();
  return takes.map((take) => ({
    ...take,
    lists: [...byOwner(take.recorders)].map(([owner, on]): TakeTracks => {
      const { tracks } = on[0]!;
      const before = last.get(owner);
      const isSame = before !== undefined && areAlike(before.tracks, tracks);
      if (!isSame) last.set(owner, { tracks, text: take.text });
      return { owner, on: on.map(({ name }) => name), tracks, asAt: isSame ? before.text : '' };
    }),
  }));
}

/** Whether two lists say the same of the same tracks, as those of most takes in a row do. */
const areAlike = (some: readonly TrackLine[], others: readonly TrackLine[]): boolean =>
  some === others ||
  (some.length === others.length &&
    some.every((line, at) => line.track === others[at]!.track && trackKey(line) === trackKey(others[at]!)));

const whole = ({ recorders, tracks }: Listed): TakeTracks => ({
  owner: recorders[0]?.recordsAs ?? FIRST_RECORDER,
  on: [],
  tracks,
  asAt: '',
});

function byOwner(recorders: readonly OnRecorder[]): Map<PartId, OnRecorder[]> {
  const owners = new Map<PartId, OnRecorder[]>();
  for (const one of recorders) owners.set(one.recordsAs, [...(owners.get(one.recordsAs) ?? []), one]);
  return owners;
}
