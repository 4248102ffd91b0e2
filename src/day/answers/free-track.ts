import type { Part, PartId } from '../model.ts';
import { recorderOfPart } from '../recorder-of-part.ts';
import type { ChainAnswers } from './answering.ts';
import { audibleOn, type Heard } from './track-answers.ts';

type Of = Pick<ChainAnswers, 'inputs' | 'tracks'>;

/** The iso track that somebody could have alone: one that no input feeds, else one whose inputs get nothing. */
export function freeTrack({ inputs, tracks }: Of): Part | undefined {
  const fed = new Map<PartId, number>();
  for (const { reach } of inputs)
    for (const track of reach.tracks) fed.set(track, Math.max(fed.get(track) ?? 0, reach.arrival ? 2 : 1));
  const empty = tracks.filter(({ state }) => state === 'empty').map(({ track }) => track);
  return [0, 1].flatMap((by) => empty.find(({ id }) => (fed.get(id) ?? 0) === by) ?? [])[0];
}

const onRecorder = ({ inputs, tracks }: Of, recorder: PartId): Of => ({
  inputs: inputs.filter(({ input }) => recorderOfPart(input) === recorder),
  tracks: tracks.filter(({ track }) => recorderOfPart(track) === recorder),
});

export interface WayOut {
  readonly mover: Heard;
  readonly to: Part;
}

/**
 * Who of a clash could move to a free track of its recorder, and to which: the last one, since the first was there before. Nobody, if
 * no track is free or whoever moves would take another along, who comes in by the same input.
 */
export function wayOutOfClash(answers: Of, track: PartId): WayOut | undefined {
  const answer = answers.tracks.find((one) => one.track.id === track);
  if (answer?.state !== 'clash') return undefined;
  const audible = audibleOn(answer);
  const mover = audible.findLast(
    ({ input, source }) => !audible.some((one) => one.input === input && one.source.id !== source.id),
  );
  const to = freeTrack(onRecorder(answers, recorderOfPart(answer.track)));
  return mover && to && { mover, to };
}
