import * as z from 'zod/mini';
import { idText, longText, shortText, text, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

export const SCENE_STATES = ['to-shoot', 'done', 'moved'] as const;
export type SceneState = (typeof SCENE_STATES)[number];

/** The longest of each text of a scene. */
export const SCENE_TEXT_LONGEST = { number: 20, intExt: 20, set: 200, dayNight: 40, pages: 20 } as const;

const fields = z.object({
  number: z.optional(text(SCENE_TEXT_LONGEST.number)),
  intExt: z.optional(text(SCENE_TEXT_LONGEST.intExt)),
  set: z.optional(text(SCENE_TEXT_LONGEST.set)),
  dayNight: z.optional(text(SCENE_TEXT_LONGEST.dayNight)),
  pages: z.optional(text(SCENE_TEXT_LONGEST.pages)),
  synopsis: z.optional(longText),
  crowd: z.optional(shortText),
  /** Who is in it. */
  voices: z.optional(z.array(idText).check(z.maxLength(200))),
  /** Cast numbers or names of the sheet that nobody in the cast had when it was read. */
  others: z.optional(z.array(shortText).check(z.maxLength(200))),
  /** Place in the order to shoot. */
  order: z.optional(wholeNumber(0, 100_000)),
  /** Still to shoot, done, or moved to another day. */
  state: z.optional(openEnum(SCENE_STATES)),
  /** Removed from the list; facts that name it can still be read. */
  struck: z.optional(z.boolean()),
});
export type SceneFields = z.infer<typeof fields>;

/** Scenes of the day: what a call sheet says of them, or somebody since. Merged field by field. */
export const scenesDescribed = kind(
  'scenes-described',
  z.object({
    scenes: z.array(z.object({ scene: idText, fields })).check(z.minLength(1), z.maxLength(500)),
  }),
);
