import type { LtcFrame } from '../../src/ltc/frames/frame.ts';
import { type Label, labelOfFrame } from '../../src/time/label.ts';
import { framesPerDay, type RateId, rateOf } from '../../src/time/rate.ts';
import { encodeRun, render } from './encode.ts';
import type { Sound } from './read-wave.ts';

type Numbers = () => number;

/**
 * A frame that is in the sound and may be given: all 64 bits that say something sound whole. Its sync word says nothing,
 * it is the same in every frame: where the sound is cut within it, what follows may happen to end it.
 */
export interface Truth {
  readonly label: Label;
  readonly start: number;
  readonly end: number;
  /** Only bits of the sync word are cut off. */
  readonly isCut: boolean;
  readonly userBits: string;
  readonly drop: boolean;
}

export interface Spoilt extends Sound {
  readonly truth: readonly Truth[];
  readonly how: string;
}

const RATES: readonly RateId[] = ['23.976', '24', '25', '29.97', '29.97DF', '30'];
const FRAMES = 9;
/** The bits before the sync word. */
const DATA_PART = 64 / 80;

/** Runs of timecode cut together anywhere and then spoilt, the same for the same numbers, and what is in them. */
export function spoiltSound(next: Numbers): Spoilt {
  const within = (low: number, high: number): number => low + (high - low) * next();
  const oneOf = <T>(all: readonly T[]): T => all[Math.floor(next() * all.length)]!;
  const sampleRate = oneOf([16_000, 44_100, 48_000, 48_000]);
  const pieces: Float32Array[] = [];
  const truth: Truth[] = [];
  let at = 0;
  const runs = oneOf([1, 2, 3]);
  for (let run = 0; run < runs; run += 1) {
    const rate = oneOf(RATES);
    const { num, den, dropped } = rateOf(rate);
    const speed = oneOf([1, 1, 1, within(0.5, 1.9)]);
    const first = Math.floor(next() * framesPerDay(rate));
    const userBits = oneOf(['00000000', '20261128', 'FFFFFFFF', hex8(next)]);
    const polarity = next() < 0.8;
    const frames = encodeRun(first, FRAMES, rate, { userBits, polarity });
    const fps = (num / den) * speed;
    const start = within(0, 300);
    const whole = render(frames, { sampleRate, fps, start, level: within(0.02, 0.7), tail: 200 });
    const piece = next() < 0.3 ? whole.subarray(0, Math.floor(whole.length * within(0.4, 1))) : whole;
    for (let i = 0; i < FRAMES; i += 1) {
      const begins = start + (i * sampleRate) / fps;
      const ends = begins + sampleRate / fps;
      if (begins + (ends - begins) * DATA_PART > piece.length) break;
      truth.push({
        label: labelOfFrame(first + i, rate),
        ...{ start: at + begins, end: at + ends, isCut: ends > piece.length },
        ...{ userBits, drop: dropped > 0 },
      });
    }
    pieces.push(piece);
    at += piece.length;
  }
  const samples = new Float32Array(at);
  let to = 0;
  for (const piece of pieces) {
    samples.set(piece, to);
    to += piece.length;
  }
  return { sampleRate, samples, truth, how: spoil(samples, sampleRate, next) };
}

const hex8 = (next: Numbers): string =>
  Array.from({ length: 8 }, () => Math.floor(next() * 16).toString(16))
    .join('')
    .toUpperCase();

function spoil(samples: Float32Array, sampleRate: number, next: Numbers): string {
  const done: string[] = [];
  const some = (name: string, chance: number, change: () => void): void => {
    if (next() >= chance) return;
    done.push(name);
    change();
  };
  const each = (change: (value: number, at: number) => number): void => {
    for (let i = 0; i < samples.length; i += 1) samples[i] = change(samples[i]!, i);
  };
  const stretches = (most: number, longest: number, change: (value: number) => number): void => {
    for (let count = 1 + Math.floor(next() * most); count > 0; count -= 1) {
      const from = Math.floor(next() * samples.length);
      const end = Math.min(samples.length, from + Math.ceil(next() * longest));
      for (let i = from; i < end; i += 1) samples[i] = change(samples[i]!);
    }
  };
  some('turned over in stretches', 0.3, () => stretches(20, sampleRate / 500, (value) => -value));
  some('silenced in stretches', 0.3, () => stretches(20, sampleRate / 800, () => 0));
  some('held in stretches', 0.3, () => stretches(20, sampleRate / 1000, () => 0.5));
  some('low-pass', 0.2, () => {
    const part = 0.1 + 0.6 * next();
    let state = 0;
    each((value) => {
      state += part * (value - state);
      return state;
    });
  });
  some('noise', 0.6, () => {
    const loud = 0.6 * next() ** 2;
    each((value) => value + loud * (next() + next() - 1));
  });
  some('clicks', 0.3, () => stretches(40, 4, () => 2 * next() - 1));
  some('hum', 0.3, () => {
    const [loud, turn] = [next(), (2 * Math.PI * (50 + 10 * Math.round(next()))) / sampleRate];
    each((value, i) => value + loud * Math.sin(turn * i));
  });
  some('constant level', 0.3, () => {
    const level = 2 * next() - 1;
    each((value) => value + level);
  });
  some('clipped', 0.3, () => {
    const most = 0.05 + 0.5 * next();
    each((value) => Math.max(-most, Math.min(most, value)));
  });
  some('eight bits', 0.3, () => each((value) => Math.round(value * 128) / 128));
  return done.join(', ');
}

/** Frames that were given and are not in the sound where they are said to be, or say something else than it does. */
export const wrongFrames = (given: readonly LtcFrame[], truth: readonly Truth[]): LtcFrame[] =>
  given.filter((frame) => {
    const there = truthOf(frame, truth);
    return !there || !isSame(frame, there);
  });

/** The frame of the sound that begins and ends where one that was given does, to half a bit. */
export function truthOf(frame: LtcFrame, truth: readonly Truth[]): Truth | undefined {
  const near = (frame.end - frame.start) / 160;
  return truth.find(
    ({ start, end }) => Math.abs(start - frame.start) < near && Math.abs(end - frame.end) < near,
  );
}

function isSame(frame: LtcFrame, { label, userBits, drop }: Truth): boolean {
  const { hours, minutes, seconds, frames } = frame.label;
  return (
    hours === label.hours &&
    minutes === label.minutes &&
    seconds === label.seconds &&
    frames === label.frames &&
    frame.dropFlag === drop &&
    frame.step === 1 &&
    !frame.reversed &&
    (frame.userBits === null || frame.userBits === userBits)
  );
}
