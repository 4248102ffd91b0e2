import type { VoiceAnswer } from '../../day/answers/voice-answers.ts';
import type { Day, Voice } from '../../day/model.ts';
import { listOf, VOICE_WORD } from './chain.ts';
import { nameWithRecorder } from './recorder-names.ts';

/** How a voice is recorded, and where: `alone on 5`, `alone on Cart 5 and Bag 2`, `clash on 7`, `not recorded`. */
export function stateWords(day: Day, { state, tracks }: VoiceAnswer): string {
  const word = VOICE_WORD[state] || 'alone';
  if (state === 'off' || state === 'unrecorded' || tracks.length === 0) return word;
  return `${word} on ${listOf(tracks.map((id) => nameWithRecorder(day, id)))}`;
}

/** Who is behind the part's name: the performer, a boom's operator, where a plant or feed comes from. */
export function behindWords({ part, person, place }: Voice): string {
  return [part ? person : '', place].filter(Boolean).join(', ');
}

/** When somebody is expected: `pick-up 06:30, on set 07:15`. */
export const callTimesWords = ({ pickUp, onSet }: Pick<Voice, 'pickUp' | 'onSet'>): string =>
  [pickUp && `pick-up ${pickUp}`, onSet && `on set ${onSet}`].filter(Boolean).join(', ');
