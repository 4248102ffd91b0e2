import type { Day, PartId, Take, TakeId } from '../model.ts';
import { takesInOrder } from '../takes.ts';
import { answersAtTake, answersBefore } from './answers.ts';
import { useOfTrack } from './gang-reach.ts';

/**
 * The first of the takes, in a row up to a place on the line, that a track was used in as it is used there; none if it
 * came about after the last of them.
 */
export function trackSince(day: Day, track: PartId, before: TakeId | undefined): Take | undefined {
  const takes = takesInOrder(day);
  const end = before === undefined ? takes.length : takes.findIndex(({ id }) => id === before) + 1;
  const useAt = ({ tracks }: ReturnType<typeof answersBefore>): string =>
    useOfTrack(tracks.find((one) => one.track.id === track));
  const here = useAt(answersBefore(day, before));
  let since: Take | undefined;
  for (const take of takes.slice(0, end).reverse()) {
    if (useAt(answersAtTake(day, take.id)) !== here) break;
    since = take;
  }
  return since;
}
