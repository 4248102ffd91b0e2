import * as z from 'zod/mini';
import { amount, idText, momentMs, shortText, wholeNumber } from './envelope.ts';
import { kind } from './kind.ts';
import { openEnum } from './open-enum.ts';

// Batteries, timecode, media and the hours of the day. A device is a transmitter or a recorder of the rig, the first
// recorder (`recorder`), or anything else that was described.

const devices = z.array(idText).check(z.minLength(1), z.maxLength(500));
const runtimeHours = amount(0.05, 1000);

/** Fresh cells went into devices, at `atMs` or when this was recorded. */
export const cellsChanged = kind(
  'cells-changed',
  z.object({ devices, atMs: z.optional(momentMs), runtimeHours: z.optional(runtimeHours) }),
);

/** Devices were jammed from another, at `atMs` or when this was recorded. */
export const devicesJammed = kind(
  'devices-jammed',
  z.object({ devices, from: idText, atMs: z.optional(momentMs) }),
);

const DAY_MS = 86_400_000;

/** A device was heard after another: its timecode is ahead by `offMs`, give or take `doubtMs`. */
export const timecodeCompared = kind(
  'timecode-compared',
  z.object({
    device: idText,
    from: idText,
    atMs: momentMs,
    offMs: amount(-DAY_MS, DAY_MS),
    doubtMs: amount(0, DAY_MS),
  }),
);

export const RUNTIME_BASES = ['measured', 'planned'] as const;

const deviceFields = z.object({
  name: z.optional(shortText),
  /** How long a set of cells lasts, and whether that was measured. */
  runtimeHours: z.optional(z.nullable(runtimeHours)),
  runtimeBasis: z.optional(openEnum(RUNTIME_BASES)),
  hasCells: z.optional(z.boolean()),
  hasTimecode: z.optional(z.boolean()),
  /** How far its own clock may drift, in parts per million. */
  ppm: z.optional(z.nullable(amount(0, 10_000))),
  struck: z.optional(z.boolean()),
});
export const devicesDescribed = kind('devices-described', z.object({ devices, fields: deviceFields }));

/** A card or drive that a recorder writes to, the first one if none is named. */
const cardFields = z.object({
  name: z.optional(shortText),
  recorder: z.optional(idText),
  bytes: z.optional(wholeNumber(1, 1e15)),
  /** Bytes already used when it went in. */
  usedBytes: z.optional(wholeNumber(0, 1e15)),
  /** Tracks armed on it; null for all of the recorder. */
  tracks: z.optional(z.nullable(wholeNumber(1, 512))),
  /** When it went in and came out; null for the whole day. */
  inAtMs: z.optional(z.nullable(momentMs)),
  outAtMs: z.optional(z.nullable(momentMs)),
  /** Checked copies on separate devices. */
  copies: z.optional(wholeNumber(0, 20)),
  struck: z.optional(z.boolean()),
});
export const cardDescribed = kind('card-described', z.object({ card: idText, fields: cardFields }));

const shift = z.object({
  callAtMs: z.optional(z.nullable(momentMs)),
  mealAtMs: z.optional(z.nullable(momentMs)),
  wrapAtMs: z.optional(z.nullable(momentMs)),
});
export const shiftPlanned = kind('shift-planned', z.object({ shift: shift }));

export type DeviceFields = z.infer<typeof deviceFields>;
export type CardFields = z.infer<typeof cardFields>;
export type ShiftFields = z.infer<typeof shift>;
