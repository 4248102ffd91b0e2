import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import type { PartId, Rig } from '../model.ts';
import { recorderOfPart } from '../recorder-of-part.ts';

/** Every recorder of a rig, the first one first. */
export const recorderIds = ({ recorders }: Pick<Rig, 'recorders'>): PartId[] => [
  FIRST_RECORDER,
  ...recorders.map(({ id }) => id),
];

/** Of those said to roll the ones that are there, the main one first; the first recorder if none is. */
export function rollingIds(
  rig: Pick<Rig, 'recorders'>,
  said: readonly PartId[] | null | undefined,
): PartId[] {
  const rolling = recorderIds(rig).filter((id) => said?.includes(id));
  return rolling.length > 0 ? rolling : [FIRST_RECORDER];
}

/** The recorder whose inputs and tracks it records: the first one's until it has tracks of its own. */
export const recordsAs = ({ tracks }: Pick<Rig, 'tracks'>, recorder: PartId): PartId =>
  tracks.some((track) => recorderOfPart(track) === recorder) ? recorder : FIRST_RECORDER;
