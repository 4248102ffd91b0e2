import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import type { CardFields } from '../../facts/kinds/upkeep-logged.ts';
import type { Day, PartId, Take } from '../model.ts';
import { mainAtTake } from '../recorders/rolling.ts';
import { takenAtMs } from '../taken-at.ts';

/** The recorder that a card is in: the first one if none was named, or the one named is not there any more. */
export const recorderOfCard = ({ rig }: Pick<Day, 'rig'>, { recorder }: CardFields): PartId =>
  recorder !== undefined && rig.recorders.some(({ id }) => id === recorder) ? recorder : FIRST_RECORDER;

/**
 * How many tracks were armed for a take on a recorder, its main one if none is named: as said of the card that was
 * in, of several the most. Null if nobody said: a recorder writes armed tracks whether anybody is on them or not.
 */
export function tracksArmed(
  day: Day,
  take: Take,
  recorder: PartId = mainAtTake(day, take.id),
): number | null {
  const said = [...day.upkeep.cards.values()].filter(
    (card) => !card.struck && card.tracks && recorderOfCard(day, card) === recorder,
  );
  if (said.length === 0) return null;
  const at = takenAtMs(day, take);
  const tracks = said
    .filter(({ inAtMs, outAtMs }) => at >= (inAtMs ?? at) && (outAtMs == null || at < outAtMs))
    .map(({ tracks }) => tracks!);
  return tracks.length > 0 ? Math.max(...tracks) : null;
}
