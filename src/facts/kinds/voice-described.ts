import * as z from 'zod/mini';
import { idText, text, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

export const VOICE_KINDS = ['performer', 'boom', 'plant', 'feed'] as const;

/** The longest that each text of a voice may be. */
export const VOICE_TEXT_LONGEST = { part: 200, person: 200, number: 20, place: 200 } as const;

/** A voice is whatever is wanted on a track: a performer, a hardline boom or plant, a line feed. */
const fields = z.object({
  kind: z.optional(openEnum(VOICE_KINDS)),
  /** What editors read: the part a performer plays, or the boom's name. */
  part: z.optional(text(VOICE_TEXT_LONGEST.part)),
  person: z.optional(text(VOICE_TEXT_LONGEST.person)),
  number: z.optional(text(VOICE_TEXT_LONGEST.number)),
  /** 1 is the most important. */
  priority: z.optional(wholeNumber(1, 999)),
  place: z.optional(text(VOICE_TEXT_LONGEST.place)),
  /** Taken off the cast list; what was said of it before still holds. */
  struck: z.optional(z.boolean()),
});

export const voiceDescribed = kind('voice-described', z.object({ voice: idText, fields: fields }));
export type VoiceFields = z.infer<typeof fields>;
/** The fields in which anything may be typed. */
export type VoiceText = {
  [Field in keyof VoiceFields]-?: string extends NonNullable<VoiceFields[Field]> ? Field : never;
}[keyof VoiceFields];
export type VoiceKind = (typeof VOICE_KINDS)[number];
