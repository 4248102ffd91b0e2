import { joinWords, viewOf } from '../riff/byte-view.ts';
import { decodeField } from '../riff/text-field.ts';
import type { Warn } from '../warning.ts';

/** The broadcast audio extension. Empty text fields are ''. */
export interface Bext {
  /** Byte position of the chunk. */
  readonly at: number;
  readonly version: number;
  readonly description: string;
  readonly originator: string;
  readonly originatorReference: string;
  /** yyyy-mm-dd and hh:mm:ss whatever separators the file uses. */
  readonly originationDate: string | undefined;
  readonly originationTime: string | undefined;
  /** Samples from midnight to the first sample, counted at the sample rate of the format. */
  readonly timeReference: number | undefined;
}

// EBU Tech 3285 v2, bext chunk: offset and width of each field, from the first payload byte; integers little-endian.
const DESCRIPTION = [0, 256] as const;
const ORIGINATOR = [256, 32] as const;
const ORIGINATOR_REFERENCE = [288, 32] as const;
const ORIGINATION_DATE = [320, 10] as const;
const ORIGINATION_TIME = [330, 8] as const;
const TIME_REFERENCE_LOW = 338;
const TIME_REFERENCE_HIGH = 342;
const VERSION = 346;

/** Bytes of the fields about a take; the identifier, loudness and coding history come after them. */
export const BEXT_BYTES = 602;

/** A day has fewer samples than this at every sample rate up to 12 MHz. */
const IMPLAUSIBLE_SAMPLES = 2 ** 40;

/**
 * Reads a payload of version 0 to 2; fields missing from a truncated chunk are empty or undefined. `at` is
 * the chunk's position.
 */
export function readBext(payload: Uint8Array, at: number, warn: Warn): Bext {
  const start = at + 8;
  if (payload.byteLength < BEXT_BYTES) warn({ code: 'bext-short', at, size: payload.byteLength });
  const whole = padded(payload);
  const view = viewOf(whole);
  const version = view.getUint16(VERSION, true);
  if (version > 2) warn({ code: 'bext-version-unknown', at: start + VERSION, version });
  const text = ([offset, width]: readonly [number, number]): string => {
    const { text: value, encoding } = decodeField(whole.subarray(offset, offset + width));
    if (encoding !== 'ascii') warn({ code: 'text-not-ascii', at: start + offset, encoding });
    return value;
  };
  return {
    at,
    version,
    description: text(DESCRIPTION),
    originator: text(ORIGINATOR),
    originatorReference: text(ORIGINATOR_REFERENCE),
    originationDate: readDate(text(ORIGINATION_DATE), start + ORIGINATION_DATE[0], warn),
    originationTime: readTime(text(ORIGINATION_TIME), start + ORIGINATION_TIME[0], warn),
    timeReference: readTimeReference(payload, start, warn),
  };
}

function padded(payload: Uint8Array): Uint8Array {
  if (payload.byteLength >= BEXT_BYTES) return payload;
  const whole = new Uint8Array(BEXT_BYTES);
  whole.set(payload);
  return whole;
}

function readTimeReference(payload: Uint8Array, start: number, warn: Warn): number | undefined {
  if (payload.byteLength < VERSION) return undefined;
  const view = viewOf(payload);
  const samples = joinWords(
    view.getUint32(TIME_REFERENCE_HIGH, true),
    view.getUint32(TIME_REFERENCE_LOW, true),
  );
  if (samples < IMPLAUSIBLE_SAMPLES) return samples;
  warn({ code: 'time-reference-implausible', at: start + TIME_REFERENCE_LOW, samples });
  return undefined;
}

// By position, because the separator may be any character (EBU Tech 3285, OriginationDate).
function readDate(text: string, at: number, warn: Warn): string | undefined {
  if (text === '') return undefined;
  const [, year, month, day] = /^(\d{4}).(\d\d).(\d\d)$/su.exec(text) ?? [];
  if (year && month && day && inRange(month, 1, 12) && inRange(day, 1, 31)) return `${year}-${month}-${day}`;
  warn({ code: 'bext-date-unreadable', at, text });
  return undefined;
}

function readTime(text: string, at: number, warn: Warn): string | undefined {
  if (text === '') return undefined;
  const [, hour, minute, second] = /^(\d\d).(\d\d).(\d\d)$/su.exec(text) ?? [];
  if (hour && minute && second && inRange(hour, 0, 23) && inRange(minute, 0, 59) && inRange(second, 0, 59))
    return `${hour}:${minute}:${second}`;
  warn({ code: 'bext-date-unreadable', at, text });
  return undefined;
}

const inRange = (digits: string, least: number, most: number): boolean =>
  Number(digits) >= least && Number(digits) <= most;
