import { answersNow } from '../day/answers.ts';
import { isHardline } from '../day/cast-in-order.ts';
import type { Day, VoiceId } from '../day/model.ts';
import { isWaitedFor } from '../day/voice-answers.ts';

/**
 * Whoever is needed now, and every hardline that is up unless somebody said that it is not needed: a boom does not wait
 * to be asked for.
 */
export const neededNow = (day: Day): ReadonlySet<VoiceId> =>
  new Set(
    answersNow(day).voices.flatMap(({ voice, need, tracks }) => {
      const isUp = isHardline(voice.kind) && tracks.length > 0 && need === null;
      return isWaitedFor(need) || isUp ? voice.id : [];
    }),
  );
