import type { Label } from '../../time/label.ts';

/** What the data bits of one frame say (SMPTE ST 12-1): bits 0 to 31 in `low`, 32 to 63 in `high`. */
export interface FrameBits {
  readonly low: number;
  readonly high: number;
}

/** One frame of linear timecode, as heard. Positions are in samples since the start, with fractions. */
export interface LtcFrame {
  readonly label: Label;
  readonly dropFlag: boolean;
  readonly colourFlag: boolean;
  /** Eight hex digits, eighth group first; null until two frames in a row have said the same. */
  readonly userBits: string | null;
  /** Whether the zeros of the frame are even in number, as the polarity bit makes them. */
  readonly polarityHolds: boolean;
  /** Read from the last bit to the first, as from a tape that runs backwards. */
  readonly reversed: boolean;
  /** Labels from the frame before to this one: 1, -1 backwards, 0 where it stands. */
  readonly step: Step;
  /** The edge at which the first bit begins; where it is read backwards, the edge that is heard first. */
  readonly start: number;
  /** The edge that ends the sync word. */
  readonly end: number;
  /** The mean peak of the frame against full scale. */
  readonly levelDb: number;
  /** How far its edges stray from even spacing, as a part of a bit. */
  readonly jitter: number;
  /** From 0 to 1: how even its edges are, and how many frames before it led up to it. */
  readonly sure: number;
}

export type Step = 1 | 0 | -1;

/** Bits 10 and 11; 43 and 58 are binary group flags. 27 and 59 are left out: one of them follows the parity. */
const FLAGS_LOW = 0x0c00;
const FLAGS_HIGH = 0x0400_0800;

export const dropFlagOf = ({ low }: FrameBits): boolean => ((low >>> 10) & 1) === 1;
export const colourFlagOf = ({ low }: FrameBits): boolean => ((low >>> 11) & 1) === 1;

export const sameFlags = (one: FrameBits, other: FrameBits): boolean =>
  ((one.low ^ other.low) & FLAGS_LOW) === 0 && ((one.high ^ other.high) & FLAGS_HIGH) === 0;

/** The eight groups of user bits stand between the digits. */
const GROUPS = 0xf0f0_f0f0;

export const sameUserBits = (one: FrameBits, other: FrameBits): boolean =>
  ((one.low ^ other.low) & GROUPS) === 0 && ((one.high ^ other.high) & GROUPS) === 0;

/** The time that the digits say, or null where one is out of range. */
export function labelOf({ low, high }: FrameBits): Label | null {
  const frames = digits(low & 15, (low >>> 8) & 3);
  const seconds = digits((low >>> 16) & 15, (low >>> 24) & 7);
  const minutes = digits(high & 15, (high >>> 8) & 7);
  const hours = digits((high >>> 16) & 15, (high >>> 24) & 3);
  if (frames < 0 || frames > 29 || seconds < 0 || seconds > 59) return null;
  if (minutes < 0 || minutes > 59 || hours < 0 || hours > 23) return null;
  return { hours, minutes, seconds, frames };
}

const digits = (units: number, tens: number): number => (units > 9 ? -1 : tens * 10 + units);

/** The user bits as eight hex digits, eighth group first, as boxes show them. */
export function userBitsOf({ low, high }: FrameBits): string {
  let text = '';
  for (const half of [high, low]) for (const at of [28, 20, 12, 4]) text += ((half >>> at) & 15).toString(16);
  return text.toUpperCase();
}

/** Whether the zeros of the whole frame are even in number: of 80 bits, so are the ones then. */
export const hasEvenZeros = ({ low, high }: FrameBits): boolean =>
  (ones(low) + ones(high) + SYNC_ONES) % 2 === 0;

const SYNC_ONES = 13;

function ones(word: number): number {
  let rest = word >>> 0;
  let count = 0;
  for (; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}
