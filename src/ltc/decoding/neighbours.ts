import {
  colourFlagOf,
  dropFlagOf,
  hasEvenZeros,
  type LtcFrame,
  type Step,
  sameFlags,
  sameUserBits,
  userBitsOf,
} from '../frames/frame.ts';
import { type Base, follows } from '../frames/successor.ts';
import type { FoundFrame } from './frame-finder.ts';

/** A frame that is held until another follows it, or the last one given. */
interface Held {
  readonly frame: FoundFrame;
  readonly step: Step;
  /** How many frames led up to it, itself counted. */
  readonly run: number;
  /** Of these, how many had an even number of zeros. */
  readonly even: number;
  readonly userBits: string | null;
  readonly given: boolean;
}

/** Two frames touch if one begins this near to where the other ends, in bits. */
const TOUCH_BITS = 0.6;
const FRAME_BITS = 80;
/** How many frames must follow one another before any of them is given. */
const ENOUGH = 2;
/** The same with a wrong polarity bit, which some boxes never set; and of one label that stands. */
const ENOUGH_UNSURE = 4;
/** A step that stands is believed after this many. */
const ENOUGH_STANDING = 3;
/** With so many before it, a frame is as sure as it can be. */
const SURE_RUN = 8;

/**
 * Gives a frame only if its neighbours say so: they touch, count on by one, and have the same flags. Noise can
 * make eighty bits with a sync word and digits in range, but not two that follow one another.
 */
export function neighbours(give: (frame: LtcFrame) => void): (frame: FoundFrame) => void {
  let held: Held[] = [];
  let base: Base | undefined;

  return (frame) => {
    const last = held.at(-1);
    const next = last && following(last, frame, base);
    if (!last || !next) {
      held = [alone(frame)];
      base = undefined;
      return;
    }
    const { base: counted, ...one } = next;
    base = counted ?? base;
    held = one.given ? [one] : [...held, one];
    if (one.given) give(given(one));
    else if (isEnough(one)) {
      // The first of them had nothing before it: its user bits and its step are those of the next.
      for (const early of held)
        give(given({ ...early, step: one.step, userBits: early.userBits ?? one.userBits }));
      held = [{ ...one, given: true }];
    }
  };
}

const alone = (frame: FoundFrame): Held => ({
  frame,
  step: 1,
  run: 1,
  even: hasEvenZeros(frame) ? 1 : 0,
  userBits: null,
  given: false,
});

function following(last: Held, frame: FoundFrame, base: Base | undefined): (Held & { base?: Base }) | null {
  if (!touches(last.frame, frame) || !sameFlags(last.frame, frame)) return null;
  const found = follows(last.frame.label, frame.label, base);
  if (!found || (last.run > 1 && found.step !== last.step)) return null;
  return {
    frame,
    step: found.step,
    run: last.run + 1,
    even: last.even + (hasEvenZeros(frame) ? 1 : 0),
    userBits: sameUserBits(frame, last.frame) ? (last.userBits ?? userBitsOf(frame)) : null,
    given: last.given,
    ...(found.base && { base: found.base }),
  };
}

function touches(before: FoundFrame, frame: FoundFrame): boolean {
  const gap = Math.abs(frame.start - before.end);
  return before.reversed === frame.reversed && gap < (TOUCH_BITS * (frame.end - frame.start)) / FRAME_BITS;
}

function isEnough({ run, even, step }: Held): boolean {
  if (even < run) return run >= ENOUGH_UNSURE;
  return run >= (step === 0 ? ENOUGH_STANDING : ENOUGH);
}

function given({ frame, step, run, userBits }: Held): LtcFrame {
  const { label, reversed, start, end, jitter, peak } = frame;
  return {
    label,
    dropFlag: dropFlagOf(frame),
    colourFlag: colourFlagOf(frame),
    userBits,
    polarityHolds: hasEvenZeros(frame),
    reversed,
    step,
    start,
    end,
    levelDb: 20 * Math.log10(peak),
    jitter,
    sure: Math.min(1, run / SURE_RUN) * Math.max(0, 1 - 4 * jitter),
  };
}
