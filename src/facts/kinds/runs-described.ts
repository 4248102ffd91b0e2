import * as z from 'zod/mini';
import { amount, idText, shortText, text, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';
import type { OutputKind } from './rig-kinds.ts';

// Cables: what a run carries and how a lead is wired. All of it holds for the whole day.

export const RUN_TYPES = ['network', 'dc'] as const;
export const LEAD_ENDS = ['xlr', 'snake', 'other'] as const;
/** The outputs whose leads fit a 25-pin snake. */
export const SNAKE_SIGNALS = ['analogue', 'aes3'] as const satisfies readonly OutputKind[];

/** A powered network lead to a remote box, or a DC lead on the cart; `type` decides which fields apply. */
const runFields = z.object({
  type: z.optional(openEnum(RUN_TYPES)),
  name: z.optional(shortText),
  metres: z.optional(amount(0.1, 1000)),
  /** The device's consumption; null for the most its class allows. */
  watts: z.optional(z.nullable(amount(0.001, 10_000))),
  /** Network leads: the cable, the power class, and how warm it lies. */
  cable: z.optional(text(40)),
  powerClass: z.optional(wholeNumber(0, 8)),
  celsius: z.optional(amount(-60, 120)),
  connectorOhms: z.optional(amount(0, 20)),
  /** Network leads: the audio channels, how many per stream, and the link speed. */
  channels: z.optional(wholeNumber(0, 512)),
  channelsAStream: z.optional(wholeNumber(1, 512)),
  samplesAPacket: z.optional(wholeNumber(1, 4096)),
  linkMbps: z.optional(wholeNumber(1, 1_000_000)),
  /** DC leads only. */
  volts: z.optional(amount(0.1, 60)),
  awg: z.optional(wholeNumber(0, 40)),
  deviceMinVolts: z.optional(z.nullable(amount(0, 60))),
  batteryWattHours: z.optional(z.nullable(amount(0.01, 1_000_000))),
  /** The recorder that it powers; null for something else. */
  recorder: z.optional(z.nullable(idText)),
  struck: z.optional(z.boolean()),
});
export const runDescribed = kind('run-described', z.object({ run: idText, fields: runFields }));

const leadFields = z.object({
  name: z.optional(shortText),
  ends: z.optional(openEnum(LEAD_ENDS)),
  /** Snakes: which one, the circuit, and whether it carries AES3. */
  snake: z.optional(shortText),
  circuit: z.optional(wholeNumber(1, 8)),
  carries: z.optional(openEnum(SNAKE_SIGNALS)),
  /** Other ends. */
  words: z.optional(shortText),
});
export const leadsDescribed = kind(
  'leads-described',
  z.object({
    leads: z.array(z.object({ lead: idText, fields: leadFields })).check(z.minLength(1), z.maxLength(500)),
  }),
);

export type SnakeSignal = (typeof SNAKE_SIGNALS)[number];
export type RunFields = z.infer<typeof runFields>;
export type LeadFields = z.infer<typeof leadFields>;
