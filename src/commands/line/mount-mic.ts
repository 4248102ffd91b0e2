import { answersBefore } from '../../day/answers/answers.ts';
import { micOn } from '../../day/chain/mics.ts';
import type { Day, PartId, VoiceId } from '../../day/model.ts';
import { MIC_FIELDS, MIC_TEXT_LONGEST, type MicSaid } from '../../facts/kinds/mic-mounted.ts';
import { ok } from '../../shared/result.ts';
import { type CommandResult, missing, type Placing, placed } from '../command.ts';

/** One mic: of this voice, on this pack or (null) on its own lead. */
export interface OneMic {
  readonly voice: VoiceId;
  readonly transmitter: PartId | null;
}

/** Says something of a mic from there on; an empty text takes a field back. Nothing if all of it was said before. */
export function mountMic(
  day: Day,
  { voice, transmitter }: OneMic,
  said: MicSaid,
  at: Placing = {},
): CommandResult {
  if (!day.voices.has(voice)) return missing('voice', voice);
  if (transmitter !== null && !day.rig.byId.has(transmitter)) return missing('transmitter', transmitter);
  const known = micOn(answersBefore(day, at.before).links, voice, transmitter);
  const texts = MIC_FIELDS.flatMap((field) => {
    const text = said[field]?.trim().slice(0, MIC_TEXT_LONGEST);
    return said[field] === undefined || (text ?? '') === (known?.[field] ?? '')
      ? []
      : [[field, text || null] as const];
  });
  if (texts.length === 0) return ok([]);
  return ok([placed({ kind: 'mic-mounted', voice, transmitter, mic: Object.fromEntries(texts) }, at)]);
}

/** The same as the mic that the voice has, or had, on another pack. */
export function micAsOn(day: Day, mic: OneMic, other: PartId | null, at: Placing = {}): CommandResult {
  const known = micOn(answersBefore(day, at.before).links, mic.voice, other);
  if (!known) return missing('mic', other ?? mic.voice);
  const { carried: _, ...said } = known;
  return mountMic(day, mic, said, at);
}

/** A mic is as it was the day before. */
export function keepMic(day: Day, { voice, transmitter }: OneMic, at: Placing = {}): CommandResult {
  const known = micOn(answersBefore(day, at.before).links, voice, transmitter);
  if (!known?.carried) return ok([]);
  return ok([placed({ kind: 'mic-mounted', voice, transmitter, mic: {}, carried: false }, at)]);
}
