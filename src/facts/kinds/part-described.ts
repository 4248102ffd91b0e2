import * as z from 'zod/mini';
import { idText, shortText, wholeNumber } from './envelope.ts';
import { HIGHEST_KHZ } from './frequency.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';
import { INPUT_KINDS, OUTPUT_KINDS } from './rig-kinds.ts';

export const PART_TYPES = [
  'recorder',
  'input',
  'track',
  'send',
  'receiver',
  'channel',
  'output',
  'selector',
  'transmitter',
] as const;
export const PLACES = ['cart', 'bag', 'remote'] as const;
export const RESERVED_USES = ['comms', 'playback', 'timecode'] as const;
export const TAPS = ['pre', 'post'] as const;
export const WEARS = ['pack', 'plug-on', 'handheld'] as const;

/** Everything a part of the rig may say of itself; which fields mean something depends on `type`. */
export const partFields = z.object({
  type: z.optional(openEnum(PART_TYPES)),
  name: z.optional(shortText),
  /** Place in its list, for reading order. */
  order: z.optional(wholeNumber(0, 100_000)),
  /** Taken out of the rig; facts that name it still read. */
  struck: z.optional(z.boolean()),
  /** Of an input. */
  inputKind: z.optional(openEnum(INPUT_KINDS)),
  /** Of a track. */
  mix: z.optional(z.boolean()),
  tap: z.optional(openEnum(TAPS)),
  /** Of a receiver. */
  place: z.optional(openEnum(PLACES)),
  /** Of a channel or an output: the receiver it belongs to. */
  receiver: z.optional(idText),
  module: z.optional(shortText),
  /** Of an output. */
  outputKind: z.optional(openEnum(OUTPUT_KINDS)),
  /** Of an output: the receiver channels that leave by it. */
  carries: z.optional(z.array(idText).check(z.maxLength(16))),
  /** Of an output, an input or a send: kept for this, never offered to a voice. */
  reserved: z.optional(z.nullable(openEnum(RESERVED_USES))),
  /** Of a selector: the input it stands before, what its two positions are called, and its bank. */
  input: z.optional(idText),
  positions: z.optional(z.tuple([shortText, shortText])),
  bank: z.optional(shortText),
  /** Of a transmitter. */
  wear: z.optional(openEnum(WEARS)),
  khz: z.optional(z.nullable(wholeNumber(1, HIGHEST_KHZ))),
});

const part = idText;

export const partDescribed = kind('part-described', z.object({ part, fields: partFields }));

/** A whole rig said at once; each part merges with what was said of it before, field by field. */
export const rigLaid = kind(
  'rig-laid',
  z.object({
    parts: z.array(z.object({ part, fields: partFields })).check(z.maxLength(2000)),
  }),
);

export type PartFields = z.infer<typeof partFields>;
export type PartType = (typeof PART_TYPES)[number];
export type Place = (typeof PLACES)[number];
export type ReservedUse = (typeof RESERVED_USES)[number];
