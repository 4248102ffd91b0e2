import { answersBefore } from '../../day/answers/answers.ts';
import type { Day, Need, Slate, VoiceId } from '../../day/model.ts';
import type { Scene } from '../../day/scene.ts';
import { sceneOfSlate, scenesInOrder, voicesIn } from '../../day/scenes-in-order.ts';
import { placeOfTake } from '../../day/takes.ts';
import type { Draft } from '../../facts/fact.ts';
import type { Open } from '../../shared/open-word.ts';
import type { Placing } from '../command.ts';

/**
 * Who is needed when the slate goes to another scene of the list: those in it; those who are only in others
 * rest. What was said by hand while the slate was in that scene stays, and so does everything about somebody
 * whom no scene of the list names. Nothing for a scene that is not on the list.
 */
export function needOfScene(day: Day, slate: Slate, at: Placing = {}): Draft[] {
  const scene = sceneOfSlate(day, slate);
  if (!scene) return [];
  const place = at.before === undefined ? day.line.length : placeOfTake(day, at.before);
  const { byHand, last } = saidInScene(day, scene, place);
  if (last === scene) return [];
  const now = new Map(answersBefore(day, at.before).voices.map(({ voice, need }) => [voice.id, need]));
  const inIt = new Set(voicesIn(day, scene).map(({ id }) => id));
  const named = new Set(scenesInOrder(day).flatMap((one) => voicesIn(day, one).map(({ id }) => id)));
  const voices = [...new Set([...named, ...byHand.keys()])].flatMap((voice) => {
    const before = now.get(voice);
    // Somebody wrapped for the day by hand is not called back by a list.
    if (before === undefined || (before === 'done' && !byHand.has(voice))) return [];
    const need = byHand.get(voice) ?? (inIt.has(voice) ? 'needed' : 'resting');
    const isSame = before === need || (need === 'resting' && before === null);
    return isSame ? [] : [{ voice, need }];
  });
  return voices.length === 0 ? [] : [{ kind: 'voices-needed', voices, scene: scene.number }];
}

/** What was said by hand of need while the slate was in a scene, and the scene of the last slate. */
function saidInScene(day: Day, scene: Scene, place: number) {
  const byHand = new Map<VoiceId, Open<Need>>();
  let last: Scene | undefined;
  for (const { fact, takenBack } of day.line.slice(0, place)) {
    if (takenBack) continue;
    if (fact.kind === 'slate-called') last = sceneOfSlate(day, fact.slate);
    if (fact.kind !== 'voices-needed' || fact.scene !== undefined || last !== scene) continue;
    for (const { voice, need } of fact.voices) byHand.set(voice, need);
  }
  return { byHand, last };
}
