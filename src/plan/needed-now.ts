import { answersNow } from '../day/answers.ts';
import type { Day, VoiceId } from '../day/model.ts';

/**
 * Whoever is needed now, and every hardline that is up unless somebody said that it is not needed: a boom does not wait
 * to be asked for.
 */
export const neededNow = (day: Day): ReadonlySet<VoiceId> =>
  new Set(
    answersNow(day).voices.flatMap(({ voice, need, tracks }) => {
      const isUp = voice.kind !== 'performer' && tracks.length > 0 && need === null;
      return need === 'needed' || isUp ? voice.id : [];
    }),
  );
