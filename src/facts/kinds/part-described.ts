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

/** All fields of a part of the rig; `type` decides which of them apply. */
export const partFields = z.object({
  type: z.optional(openEnum(PART_TYPES)),
  name: z.optional(shortText),
  /** Place in its list, for reading order. */
  order: z.optional(wholeNumber(0, 100_000)),
  /** Removed from the rig; facts that name it can still be read. */
  struck: z.optional(z.boolean()),
  /** Inputs, tracks and sends: their recorder; the first one if it is left out. */
  recorder: z.optional(idText),
  /** Inputs only. */
  inputKind: z.optional(openEnum(INPUT_KINDS)),
  /** Tracks only. */
  mix: z.optional(z.boolean()),
  tap: z.optional(openEnum(TAPS)),
  /** Receivers only. */
  place: z.optional(openEnum(PLACES)),
  /** Channels and outputs: their receiver. */
  receiver: z.optional(idText),
  module: z.optional(shortText),
  /** Outputs only. */
  outputKind: z.optional(openEnum(OUTPUT_KINDS)),
  /** Outputs: the receiver channels they carry. */
  carries: z.optional(z.array(idText).check(z.maxLength(16))),
  /** Outputs, inputs and sends: reserved for this, never offered to a voice. */
  reserved: z.optional(z.nullable(openEnum(RESERVED_USES))),
  /** Selectors: the input, the names of the two positions, and the bank. */
  input: z.optional(idText),
  positions: z.optional(z.tuple([shortText, shortText])),
  bank: z.optional(shortText),
  /** Transmitters only. */
  wear: z.optional(openEnum(WEARS)),
  khz: z.optional(z.nullable(wholeNumber(1, HIGHEST_KHZ))),
});

const part = idText;

export const partDescribed = kind('part-described', z.object({ part, fields: partFields }));

/** A whole rig at once; each part is merged field by field with what is known of it. */
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
