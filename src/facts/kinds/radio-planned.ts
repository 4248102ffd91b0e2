import * as z from 'zod/mini';
import { idText, shortText, text, wholeNumber } from './envelope.ts';
import { HIGHEST_KHZ } from './frequency.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

// Input for the frequency plan besides the packs' own frequencies. All of it holds for the whole day.

export const TV_RASTERS = ['us', 'uhf-8-mhz'] as const;
export const BAND_USES = ['occupied', 'tunable'] as const;

const khz = wholeNumber(1, HIGHEST_KHZ);
/** A distance to keep, in kHz. */
const distance = wholeNumber(0, 10_000);

/** The mixer's own distances, field by field; 0 disables a test. */
const guards = z.object({
  carrierKhz: z.optional(distance),
  twoToneThirdKhz: z.optional(distance),
  threeToneThirdKhz: z.optional(distance),
  twoToneFifthKhz: z.optional(distance),
  tvEdgeKhz: z.optional(distance),
  /** The local TV channel raster. */
  tvRaster: z.optional(openEnum(TV_RASTERS)),
});
export const guardsSet = kind('guards-set', z.object({ guards: guards }));

/** Something else that radiates or is received: comms, a camera link, a return. */
const carrierFields = z.object({
  name: z.optional(shortText),
  khz: z.optional(z.nullable(khz)),
  /** The spacing its equipment needs; null for the plan's default. */
  spacingKhz: z.optional(z.nullable(distance)),
  /** One of our receivers listens to it, so it can be hit too. */
  heard: z.optional(z.boolean()),
  struck: z.optional(z.boolean()),
});
export const carrierDescribed = kind(
  'carrier-described',
  z.object({ carrier: idText, fields: carrierFields }),
);

/** A range of spectrum: used by somebody else, or where a group of packs can be tuned. */
const bandFields = z.object({
  use: z.optional(openEnum(BAND_USES)),
  name: z.optional(shortText),
  fromKhz: z.optional(khz),
  toKhz: z.optional(khz),
  /** Tunable bands: the raster, and the packs (by the letters before their number; empty is all). */
  rasterKhz: z.optional(wholeNumber(1, 1_000_000)),
  group: z.optional(text(40)),
  /** Tunable bands: the spacing these packs need among themselves; null for the plan's default. */
  spacingKhz: z.optional(z.nullable(distance)),
  struck: z.optional(z.boolean()),
});
export const bandDescribed = kind('band-described', z.object({ band: idText, fields: bandFields }));

/** Transmitters were switched on or off. By default all with a frequency count as on. */
export const transmittersSwitched = kind(
  'transmitters-switched',
  z.object({ transmitters: z.array(idText).check(z.minLength(1), z.maxLength(500)), on: z.boolean() }),
);

export type GuardFields = z.infer<typeof guards>;
export type CarrierFields = z.infer<typeof carrierFields>;
export type BandFields = z.infer<typeof bandFields>;
export type TvRaster = (typeof TV_RASTERS)[number];
