import { answersNow } from '../../day/answers/answers.ts';
import { pinsOf } from '../../day/chain/links.ts';
import { pinsOn } from '../../day/chain/pins.ts';
import type { Day, PartId, VoiceId } from '../../day/model.ts';
import { type Tickable, ticksOf } from '../../day/phones/ticks.ts';
import { recordsAs } from '../../day/recorders/recorder-ids.ts';
import type { Draft } from '../../facts/fact.ts';
import type { MoveWeights, Pins } from '../../facts/kinds/plan-settings.ts';
import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing } from '../command.ts';

/**
 * Pins a voice to what it has on a recorder, or removes one pin (undefined); its other pins stay. Of no recorder in
 * particular: the pack, and what it has on the main one.
 */
export function pinVoice(
  day: Day,
  voice: VoiceId,
  change: { [Pin in keyof Pins]?: Pins[Pin] | undefined },
  recorder: PartId = FIRST_RECORDER,
): CommandResult {
  if (!day.voices.has(voice)) return missing('voice', voice);
  const { links, main } = answersNow(day);
  const said = (of: PartId): Pins => pinsOf(links, voice, of)?.value ?? {};
  const changed: Draft[] = [pinned(voice, { ...said(recorder), ...change }, recorder)];
  if (recorder === FIRST_RECORDER) return ok(changed);
  // What holds there though it was said of none in particular is changed where it was said.
  const asked = { recorder, isMain: recordsAs(day.rig, main.recorder) === recorder };
  const holds = pinsOn(day.rig, links, voice, asked);
  const inherited = (Object.keys(change) as (keyof Pins)[]).filter(
    (pin) => said(recorder)[pin] === undefined && holds[pin] !== undefined,
  );
  if (inherited.length === 0) return ok(changed);
  const without = Object.fromEntries(inherited.map((pin) => [pin, undefined]));
  return ok([pinned(voice, { ...said(FIRST_RECORDER), ...without }, FIRST_RECORDER), ...changed]);
}

function pinned(
  voice: VoiceId,
  pins: { [Pin in keyof Pins]?: Pins[Pin] | undefined },
  recorder: PartId,
): Draft {
  const kept = Object.entries(pins).filter(([, value]) => value !== undefined && value !== false);
  return {
    kind: 'voice-pinned',
    voice,
    pins: kept.length > 0 ? (Object.fromEntries(kept) as Pins) : null,
    ...(recorder !== FIRST_RECORDER && { recorder }),
  };
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

/** Ticks a move that is done and not applied yet, or takes the tick off, whoever ticked it. */
export function tickMove(day: Day, move: Tickable, ticked: boolean): CommandResult {
  const isTicked = ticksOf(day)(move) !== undefined;
  return ok(isTicked === ticked ? [] : [{ kind: 'move-ticked', link: move.link, to: move.to, ticked }]);
}
