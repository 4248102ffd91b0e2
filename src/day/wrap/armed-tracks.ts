import type { Day, Take } from '../model.ts';
import { takenAtMs } from '../taken-at.ts';

/**
 * How many tracks were armed for a take: as said of the card that was in, of several the most. Null if nobody
 * said: a recorder writes armed tracks whether anybody is on them or not.
 */
export function tracksArmed(day: Day, take: Take): number | null {
  const said = [...day.upkeep.cards.values()].filter(({ struck, tracks }) => !struck && tracks);
  if (said.length === 0) return null;
  const at = takenAtMs(day, take);
  const tracks = said
    .filter(({ inAtMs, outAtMs }) => at >= (inAtMs ?? at) && (outAtMs == null || at < outAtMs))
    .map(({ tracks }) => tracks!);
  return tracks.length > 0 ? Math.max(...tracks) : null;
}
