import * as z from 'zod/mini';
import { once } from '../shared/once.ts';
import { idText, shortText, text, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';

export const VOICE_KINDS = ['performer', 'boom', 'plant', 'feed'] as const;

/** A voice is whatever is wanted on a track: a performer, a hardline boom or plant, a line feed. */
const fields = once(() =>
  z.object({
    kind: z.optional(z.enum(VOICE_KINDS)),
    /** What editors read: the part a performer plays, or the boom's name. */
    part: z.optional(shortText),
    person: z.optional(shortText),
    number: z.optional(text(20)),
    /** 1 is the most important. */
    priority: z.optional(wholeNumber(1, 999)),
    place: z.optional(shortText),
    /** Taken off the cast list; what was said of it before still holds. */
    struck: z.optional(z.boolean()),
  }),
);

export const voiceDescribed = kind('voice-described', () => z.object({ voice: idText, fields: fields() }));
export type VoiceFields = z.infer<ReturnType<typeof fields>>;
export type VoiceKind = (typeof VOICE_KINDS)[number];
