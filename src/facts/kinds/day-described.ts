import * as z from 'zod/mini';
import { longText, shortText, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

export const BIT_DEPTHS = ['16', '24', '32', '32f'] as const;
export const TIMECODE_RATES = ['23.976', '24', '25', '29.97', '29.97DF', '30'] as const;
export const SLATE_STYLES = ['lettered', 'numbered'] as const;
export const FILE_LAYOUTS = ['poly', 'mono'] as const;

/** What a recorder is set to. In the header it holds for the whole day, but for what `recorder-set` says. */
export const settingShapes = {
  sampleRate: z.optional(wholeNumber(8000, 384_000)),
  bitDepth: z.optional(openEnum(BIT_DEPTHS)),
  timecodeRate: z.optional(openEnum(TIMECODE_RATES)),
  fileLayout: z.optional(openEnum(FILE_LAYOUTS)),
  filePattern: z.optional(shortText),
};

/** The report's header fields; each holds for the whole day whenever it is entered. */
const fields = z.object({
  production: z.optional(shortText),
  label: z.optional(shortText),
  date: z.optional(z.string().check(z.regex(/^(\d{4}-\d\d-\d\d)?$/))),
  unit: z.optional(shortText),
  mixer: z.optional(shortText),
  boom: z.optional(shortText),
  utility: z.optional(shortText),
  contact: z.optional(shortText),
  /** How to reach them: phone, email. */
  mixerContact: z.optional(shortText),
  boomContact: z.optional(shortText),
  utilityContact: z.optional(shortText),
  /** The level of the reference tone, and the roll it is on. */
  tone: z.optional(shortText),
  toneRoll: z.optional(shortText),
  recorder: z.optional(shortText),
  ...settingShapes,
  slateStyle: z.optional(openEnum(SLATE_STYLES)),
  remarks: z.optional(longText),
  /** A practice day: never mixed with real ones, never carried over. */
  sample: z.optional(z.boolean()),
});

export const dayDescribed = kind('day-described', z.object({ fields: fields }));

export type HeaderFields = z.infer<typeof fields>;

/** Whoever holds this phone wrapped the day, or reopened it. It closes nothing: what comes later says so. */
export const dayWrapped = kind('day-wrapped', z.object({ wrapped: z.boolean() }));
