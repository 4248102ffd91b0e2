import type { Day, Take, VoiceId } from '../model.ts';
import { takesInOrder } from '../takes.ts';
import { type Answers, answersAtTake } from './answers.ts';
import { rolledTracks } from './rolled-parts.ts';

/** Who a voice shares its tracks with, leaving out muted ones. */
export function heardWith(answers: Answers, voice: VoiceId): VoiceId[] {
  const shared = rolledTracks(answers).filter(({ heard }) => heard.some((one) => one.voice === voice));
  const others = shared.flatMap(({ heard }) => heard.filter(({ muted }) => !muted));
  return [...new Set(others.map((one) => one.voice))].filter((id) => id !== voice);
}

/** The takes on which a voice reaches a track, muted or not, in line order. */
export const takesWith = (day: Day, voice: VoiceId): Take[] =>
  takesInOrder(day).filter(({ id }) =>
    rolledTracks(answersAtTake(day, id)).some(({ heard }) => heard.some((one) => one.voice === voice)),
  );
