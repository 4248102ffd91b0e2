import type { Day, PartId, Take, TakeId } from '../model.ts';
import { placeOfTake, takesInOrder } from '../takes.ts';
import { answersAtTake, answersBefore } from './answers.ts';
import { useOfTrack } from './gang-reach.ts';
import { isTrackRolled } from './rolled-parts.ts';

/**
 * The first of the takes with a track, in a row up to a place on the line, that it was used in as it is used there;
 * none if it came about after the last of them.
 */
export function trackSince(day: Day, track: PartId, before: TakeId | undefined): Take | undefined {
  const end = before === undefined ? day.line.length : placeOfTake(day, before);
  const useAt = ({ tracks }: ReturnType<typeof answersBefore>): string =>
    useOfTrack(tracks.find((one) => one.track.id === track));
  const here = useAt(answersBefore(day, before));
  let since: Take | undefined;
  for (const take of takesInOrder(day).reverse()) {
    if (placeOfTake(day, take.id) > end) continue;
    const answers = answersAtTake(day, take.id);
    if (!isTrackRolled(answers, track)) continue;
    if (useAt(answers) !== here) break;
    since = take;
  }
  return since;
}
