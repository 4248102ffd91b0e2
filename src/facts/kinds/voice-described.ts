import * as z from 'zod/mini';
import { idText, text, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

export const VOICE_KINDS = ['performer', 'boom', 'plant', 'feed'] as const;

/** The maximum length of each text of a voice. */
export const VOICE_TEXT_LONGEST = {
  part: 200,
  person: 200,
  number: 20,
  place: 200,
  pickUp: 40,
  onSet: 40,
} as const;

/** A voice is whatever is wanted on a track: a performer, a hardline boom or plant, a line feed. */
const fields = z.object({
  kind: z.optional(openEnum(VOICE_KINDS)),
  /** What editors read: the performer's part, or the boom's name. */
  part: z.optional(text(VOICE_TEXT_LONGEST.part)),
  person: z.optional(text(VOICE_TEXT_LONGEST.person)),
  number: z.optional(text(VOICE_TEXT_LONGEST.number)),
  /** 1 is the most important. */
  priority: z.optional(wholeNumber(1, 999)),
  place: z.optional(text(VOICE_TEXT_LONGEST.place)),
  /** When they are picked up and are to be on set, as the call sheet of the day writes it. */
  pickUp: z.optional(text(VOICE_TEXT_LONGEST.pickUp)),
  onSet: z.optional(text(VOICE_TEXT_LONGEST.onSet)),
  /** Removed from the cast list; existing facts about it still hold. */
  struck: z.optional(z.boolean()),
});

export const voiceDescribed = kind('voice-described', z.object({ voice: idText, fields: fields }));
export type VoiceFields = z.infer<typeof fields>;
/** The free-text fields. */
export type VoiceText = {
  [Field in keyof VoiceFields]-?: string extends NonNullable<VoiceFields[Field]> ? Field : never;
}[keyof VoiceFields];
export type VoiceKind = (typeof VOICE_KINDS)[number];
