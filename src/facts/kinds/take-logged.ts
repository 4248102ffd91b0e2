import * as z from 'zod/mini';
import { isOneOf, isWord } from '../../shared/open-word.ts';
import { amount, factIdText, idText, longText, shortText, text, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';
import { RATE_IDS } from './rate-ids.ts';

/**
 * A slate. Lettered: a scene and how many setups came before in it (0 is the master, 1 is A). Numbered: a
 * running slate number, with the scene given separately.
 */
const lettered = z.object({ style: z.literal('lettered'), scene: shortText, setup: wholeNumber(0, 20_000) });
const numbered = z.object({
  style: z.literal('numbered'),
  number: wholeNumber(0, 999_999),
  scene: shortText,
});
const calledSlate = z.discriminatedUnion('style', [lettered, numbered]);
export type Slate = z.infer<typeof calledSlate>;

/** A take keeps its place even if only a newer version can read its style of slate, `said`. */
const unreadSlate = z.object({ style: z.literal('unread'), said: text(40) });
const slate = z.discriminatedUnion('style', [lettered, numbered, unreadSlate]);
export type TakeSlate = z.infer<typeof slate>;

/** The slate of the takes from here on. */
export const slateCalled = kind('slate-called', z.object({ slate: calledSlate }));

export const TAKE_KINDS = ['take', 'pickup', 'wild', 'tone', 'mos'] as const;
export type TakeKind = (typeof TAKE_KINDS)[number];

/** Who shoots it, on a day with more than the main unit. */
export const UNITS = ['main', 'second', 'splinter'] as const;
export type Unit = (typeof UNITS)[number];

export const HIGHEST_TAKE = 9999;
/** More than two weeks at 60 frames a second. */
const MOST_FRAMES = 100_000_000;

/** A point in time: a count of frames at an exact rate. */
const stamp = z.object({ frames: wholeNumber(0, MOST_FRAMES), rate: openEnum(RATE_IDS) });

/** Everything that can be entered for a take, at the time or later. Null clears a field. */
export const takeFields = z.object({
  kind: z.optional(openEnum(TAKE_KINDS)),
  slate: z.optional(slate),
  number: z.optional(wholeNumber(0, HIGHEST_TAKE)),
  start: z.optional(z.nullable(stamp)),
  /** Duration as a count of frames. */
  length: z.optional(z.nullable(stamp)),
  /** Roll and Cut, UTC ms by the phone's clock; an open take has no cut. */
  rolledAt: z.optional(wholeNumber(0, 253_402_300_799_999)),
  cutAt: z.optional(wholeNumber(0, 253_402_300_799_999)),
  circled: z.optional(z.boolean()),
  noGood: z.optional(z.boolean()),
  falseStart: z.optional(z.boolean()),
  tailSlate: z.optional(z.boolean()),
  unit: z.optional(openEnum(UNITS)),
  /** A file name typed by hand instead of the one from the pattern. */
  file: z.optional(z.nullable(shortText)),
});
export type TakeFields = z.infer<typeof takeFields>;

export const takeLogged = kind('take-logged', z.object({ fields: takeFields }), 1, {}, withUnreadSlate);
export const takeDescribed = kind(
  'take-described',
  z.object({ take: factIdText, fields: takeFields }),
  1,
  {},
  withUnreadSlate,
);

function withUnreadSlate(body: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const fields = body.fields as { readonly slate?: { readonly style?: unknown } } | null | undefined;
  const style = fields?.slate?.style;
  if (!isWord(style) || isOneOf(['lettered', 'numbered', 'unread'], style)) return body;
  return { ...body, fields: { ...fields, slate: { style: 'unread', said: style } } };
}

/** A note on a take, or on one of its tracks. */
export const noteAdded = kind(
  'note-added',
  z.object({ take: factIdText, track: z.optional(idText), text: longText }),
);

/** A clock tied by ear: frames the tie is laid through, how far they stray, and the phone's own delay taken off. */
const heardBy = z.object({
  frames: wholeNumber(2, MOST_FRAMES),
  spreadMs: amount(0, 1000),
  delayMs: z.optional(amount(-1000, 1000)),
});
export type HeardBy = z.infer<typeof heardBy>;

/** The recorder showed the timecode `frames` when the phone's clock said `atMs`: by a tap, unless it was heard. */
export const clockFollowed = kind(
  'clock-followed',
  z.object({
    frames: wholeNumber(0, MOST_FRAMES),
    rate: z.enum(RATE_IDS),
    atMs: wholeNumber(0, 253_402_300_799_999),
    heard: z.optional(heardBy),
  }),
);
