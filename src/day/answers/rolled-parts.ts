import type { PartId } from '../model.ts';
import type { InputAnswer } from './input-answers.ts';
import type { RecorderAnswers } from './recorder-answers.ts';
import type { TrackAnswer } from './track-answers.ts';

type OfRecorders = { readonly recorders: readonly RecorderAnswers[] };

/** Each list of the recorders that roll once: two that record the same share theirs. */
function ofRolling<Answer>(
  { recorders }: OfRecorders,
  listOf: (one: RecorderAnswers) => readonly Answer[],
): readonly Answer[] {
  const lists = [...new Set(recorders.filter(({ rolls }) => rolls).map(listOf))];
  return lists.length === 1 ? lists[0]! : lists.flat();
}

/** The tracks of the recorders that roll, the main one's first. */
export const rolledTracks = (answers: OfRecorders): readonly TrackAnswer[] =>
  ofRolling(answers, ({ tracks }) => tracks);

/** The inputs of the recorders that roll, the main one's first. */
export const rolledInputs = (answers: OfRecorders): readonly InputAnswer[] =>
  ofRolling(answers, ({ inputs }) => inputs);

/** Whether a recorder that rolls has this track. */
export const isTrackRolled = (answers: OfRecorders, track: PartId): boolean =>
  rolledTracks(answers).some((one) => one.track.id === track);
