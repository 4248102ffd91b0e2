import type { Label } from '../../src/time/label.ts';
import { labelOfFrame } from '../../src/time/label.ts';
import { type RateId, rateOf } from '../../src/time/rate.ts';

// Written from the published layout of SMPTE ST 12-1; checked bit by bit against recordings made elsewhere.

export interface Said {
  /** Eight hex digits, eighth group first. */
  readonly userBits?: string;
  readonly colour?: boolean;
  /** False: the polarity bit stays 0, as some boxes leave it. */
  readonly polarity?: boolean;
}

const SYNC = '0011111111111101';

const SYNC_ONES = 13;

const pair = (value: number, tensAt: number): number => (value % 10) | (Math.floor(value / 10) << tensAt);

/** Every second hex digit, the last one lowest, at bits 4, 12, 20 and 28. */
const groupsOf = (hex: string): number =>
  [...hex].reduceRight((word, digit, at) => word | (Number.parseInt(digit, 16) << (4 + 8 * (3 - at))), 0);

/** The 64 data bits of a frame as two words, the first bit lowest. */
export function encodeWords(label: Label, rate: RateId, said: Said = {}): { low: number; high: number } {
  const { base, dropped } = rateOf(rate);
  const groups = said.userBits ?? '00000000';
  let low = pair(label.frames, 8) | (pair(label.seconds, 8) << 16) | groupsOf(groups.slice(4));
  let high = pair(label.minutes, 8) | (pair(label.hours, 8) << 16) | groupsOf(groups.slice(0, 4));
  if (dropped > 0) low |= 1 << 10;
  if (said.colour) low |= 1 << 11;
  if ((ones(low) + ones(high) + SYNC_ONES) % 2 === 1 && said.polarity !== false) {
    if (base === 25) high |= 1 << 27;
    else low |= 1 << 27;
  }
  return { low: low >>> 0, high: high >>> 0 };
}

function ones(word: number): number {
  let count = 0;
  for (let rest = word >>> 0; rest !== 0; rest >>>= 1) count += rest & 1;
  return count;
}

/** The 80 bits of a frame, in the order sent. */
export function encodeFrame(label: Label, rate: RateId, said?: Said): Uint8Array {
  const { low, high } = encodeWords(label, rate, said);
  const bits = new Uint8Array(80);
  for (let i = 0; i < 32; i += 1) {
    bits[i] = (low >>> i) & 1;
    bits[32 + i] = (high >>> i) & 1;
  }
  for (let i = 0; i < 16; i += 1) bits[64 + i] = Number(SYNC[i]);
  return bits;
}

/** Frames that count on from one, as bits. */
export function encodeRun(from: number, count: number, rate: RateId, said?: Said): Uint8Array[] {
  return Array.from({ length: count }, (_, i) => encodeFrame(labelOfFrame(from + i, rate), rate, said));
}

export interface Render {
  readonly sampleRate?: number;
  /** Frames a second; the rate's own by default. */
  readonly fps: number;
  readonly level?: number;
  /** Sample at which the first bit begins, with a fraction. */
  readonly start?: number;
  /** Samples after it: the edge that ends the last frame, half a bit, and silence. */
  readonly tail?: number;
}

/** A square wave of these frames, each sample the mean over its length, so that edges between samples are kept. */
export function render(frames: readonly Uint8Array[], how: Render): Float32Array {
  const { sampleRate = 48_000, fps, level = 0.5, start = 0, tail = 0 } = how;
  const half = sampleRate / fps / 160;
  const out = new Float32Array(Math.ceil(start + frames.length * 160 * half) + tail);
  let [sign, at] = [1, start];
  for (const bits of frames) {
    for (const bit of bits) {
      fill(out, at, at + half, sign * level);
      if (bit) sign = -sign;
      fill(out, at + half, at + 2 * half, sign * level);
      sign = -sign;
      at += 2 * half;
    }
  }
  if (tail > 2 * half) fill(out, at, at + half, sign * level);
  return out;
}

function fill(out: Float32Array, from: number, to: number, value: number): void {
  for (let i = Math.floor(from); i < to; i += 1) {
    out[i] = (out[i] ?? 0) + value * (Math.min(to, i + 1) - Math.max(from, i));
  }
}

/** A run of timecode as sound. */
export const sound = (
  from: number,
  count: number,
  rate: RateId,
  how: Partial<Render> & Said = {},
): Float32Array => {
  const { num, den } = rateOf(rate);
  return render(encodeRun(from, count, rate, how), { fps: num / den, ...how });
};
