import * as z from 'zod/mini';
import { LONGEST_STROKES, STROKES_TEXT } from '../../shared/strokes-text.ts';
import { idText, shortText, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';

/** A card or drive as it was handed over: a card of the day, or one that was only named. */
const carrier = z.object({
  name: shortText,
  card: z.optional(idText),
  /** Checked copies of it on separate devices. */
  copies: z.optional(wholeNumber(0, 20)),
});

/** Whoever took it signed with a finger, or with a typed name. */
const signature = z.object({
  strokes: z.optional(z.string().check(z.maxLength(LONGEST_STROKES), z.regex(STROKES_TEXT))),
  typed: z.optional(shortText),
});

/** Cards or drives went to somebody. `checked`: their files were compared with the log, with nothing left open. */
export const handedOver = kind(
  'handed-over',
  z.object({
    carriers: z.array(carrier).check(z.minLength(1), z.maxLength(50)),
    to: shortText,
    role: z.optional(shortText),
    files: z.optional(wholeNumber(0, 1_000_000)),
    bytes: z.optional(wholeNumber(0, 1e15)),
    checked: z.boolean(),
    signature: z.optional(signature),
  }),
);
