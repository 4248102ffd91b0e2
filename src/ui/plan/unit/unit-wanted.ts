import { type Answers, answersBefore } from '../../../day/answers/answers.ts';
import type { VoiceAnswer } from '../../../day/answers/voice-answers.ts';
import type { Day, PartId, TakeId, VoiceId } from '../../../day/model.ts';
import { ownPartsOf } from '../../../day/recorders/recorder-parts.ts';
import { recordersOf, rollingBefore } from '../../../day/recorders/rolling.ts';
import { neededIn } from '../../../plan/day/plan-facts.ts';

/** Who comes along: all who are needed or wired, but for those who rest or are done. */
export function comingAlong(day: Day, before: TakeId | undefined): ReadonlySet<VoiceId> {
  const answers: Answers = answersBefore(day, before);
  const isWired = ({ state, need }: VoiceAnswer): boolean =>
    state !== 'off' && need !== 'resting' && need !== 'done';
  return new Set([...neededIn(answers), ...answers.voices.filter(isWired).map(({ voice }) => voice.id)]);
}

/** Where the unit most likely goes: to the first recorder with a rig of its own that does not roll there. */
export function likelyGoal(day: Day, before: TakeId | undefined): PartId[] {
  const rolling = rollingBefore(day, before).map(({ id }) => id);
  const other = recordersOf(day).find(
    ({ id }) => !rolling.includes(id) && ownPartsOf(day.rig, id).tracks.length > 0,
  );
  return other ? [other.id] : rolling;
}
