import { answersNow } from '../../day/answers/answers.ts';
import { pinsOf } from '../../day/chain/links.ts';
import type { Day, VoiceId } from '../../day/model.ts';
import type { MoveWeights, Pins } from '../../facts/kinds/plan-settings.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing } from '../command.ts';

/** Pins a voice to what it has, or removes one pin (undefined); its other pins stay. */
export function pinVoice(
  day: Day,
  voice: VoiceId,
  change: { [Pin in keyof Pins]?: Pins[Pin] | undefined },
): CommandResult {
  if (!day.voices.has(voice)) return missing('voice', voice);
  const now = pinsOf(answersNow(day).links, voice)?.value ?? {};
  const pins = Object.fromEntries(
    Object.entries({ ...now, ...change }).filter(([, value]) => value !== undefined && value !== false),
  ) as Pins;
  return ok([{ kind: 'voice-pinned', voice, pins: Object.keys(pins).length > 0 ? pins : null }]);
}

/** Marks a transmitter, channel, lead, input or track as out of order, or as working again. */
export function markOut(part: string, out: boolean): CommandResult {
  return ok([{ kind: 'out-marked', part, out }]);
}

/** Sets what each kind of move costs on this rig, 1 to 99. */
export function weighMoves(weights: MoveWeights): CommandResult {
  const wrong = Object.entries(weights).find(
    ([, w]) => w !== undefined && !(Number.isInteger(w) && w >= 1 && w <= 99),
  );
  if (wrong) return fail({ code: 'weight-unusable', move: wrong[0], weight: Number(wrong[1]) });
  return ok([{ kind: 'moves-weighed', weights }]);
}
