import { aroundDay } from '../log-and-card/label-time.ts';
import type { Logged } from '../log-and-card/logged.ts';
import { lengthApartMs, type Recorded } from '../log-and-card/recorded.ts';
import type { CardHabits } from './card-habits.ts';

/** The recorder's label for a take's start, from what is known of the two clocks. */
export type ToRecorder = (logMs: number) => number;

/**
 * How likely each observation is if the recording is the take's, and if it is any other. Evidence is counted
 * in bits, log2 of one over the other, and added (Fellegi and Sunter 1969). All figures are from memory of
 * cards and logs: common practice, no source. What counts is that each can be argued with by itself.
 */
export const CHANCES = {
  /** The log's name for a file is unique on the card. Recorders with names of their own say nothing. */
  name: { same: 0.6, other: 0.001 },
  nameTyped: { same: 0.95, other: 0.00001 },
  /** A slate or number is typed wrong, or changed late, once in ten; for others it is the card's share. */
  slate: { same: 0.9 },
  number: { same: 0.9 },
  /** The scene of a numbered slate is shared by many takes. */
  looseSlate: { same: 0.9, other: 0.4 },
  /** The roll is changed late more often. */
  roll: { same: 0.85 },
  /** A word in the file, such as FALSE_START, that the log has or has not. */
  type: { same: 0.8, other: 0.1 },
  /** Hands on two buttons, a late hand, and a clock or button that says nothing. */
  start: { hands: 0.83, late: 0.12, astray: 0.05 },
  length: { hands: 0.75, late: 0.15, astray: 0.1 },
} as const;

/** Two hands are about a second apart, a late one eight. */
const HANDS_MS = 1000;
const LATE_MS = 8000;
/** Other takes start anywhere in ten hours, and last anything within two minutes. */
const DAY_SPAN_MS = 36_000_000;
const LENGTH_SPAN_MS = 120_000;

/** One track's name that changes over the card and fits, or does not; and at most so much, as they go together. */
const TRACK_BITS = { fits: 0.7, differs: -1, most: 3, least: -4 } as const;

/**
 * Fewer bits are no pair: of takes with sound about one in thirty has no file, so that among thirty recordings
 * the odds are even where nothing speaks for or against (common practice, no source).
 */
export const LEAST_BITS = 0;

/** A choice this close to the best counts as equally good: sixteen to one is asked about. */
export const MARGIN_BITS = 4;

const bits = (same: number, other: number): number => Math.log2(same / other);

/** The evidence that a recording is a take's, in bits; below zero it speaks against. */
export function likelihood(
  logged: Logged,
  recorded: Recorded,
  habits: CardHabits,
  toRecorder: ToRecorder,
  dayMs: number,
): number {
  return (
    nameBits(logged, recorded) +
    slateBits(logged, recorded, habits) +
    numberBits(logged, recorded, habits) +
    rollBits(logged, recorded, habits) +
    typeBits(logged, recorded) +
    startBits(logged, recorded, toRecorder, dayMs) +
    lengthBits(logged, recorded)
  );
}

function nameBits({ stem, stems, nameTyped }: Logged, recorded: Recorded): number {
  if (stem === '') return 0;
  const fits = stems.some((one) => recorded.stems.has(one)) || recorded.shortStems.has(stem);
  const { same, other } = nameTyped ? CHANCES.nameTyped : CHANCES.name;
  return fits ? bits(same, other) : 0;
}

function slateBits(
  { scenes, looseScenes }: Logged,
  { scene }: Recorded,
  { scenes: shares }: CardHabits,
): number {
  if (scene === undefined || shares.only === scene) return 0;
  if (scenes.includes(scene)) return agreeing(CHANCES.slate.same, shares.shareOf(scene));
  if (looseScenes.includes(scene)) return bits(CHANCES.looseSlate.same, CHANCES.looseSlate.other);
  return differing(CHANCES.slate.same, Math.max(0, ...scenes.map(shares.shareOf)));
}

function numberBits({ take }: Logged, { number }: Recorded, { numbers, numbersRun }: CardHabits): number {
  if (number === undefined || numbersRun || numbers.only === number) return 0;
  const share = numbers.shareOf(take.number);
  return number === take.number
    ? agreeing(CHANCES.number.same, share)
    : differing(CHANCES.number.same, share);
}

function rollBits(logged: Logged, { roll }: Recorded, { rolls }: CardHabits): number {
  if (logged.roll === undefined || roll === undefined || rolls.only === roll) return 0;
  const share = rolls.shareOf(logged.roll);
  return logged.roll === roll ? agreeing(CHANCES.roll.same, share) : differing(CHANCES.roll.same, share);
}

/** A value that most of the card has says little where it fits, and much where it does not. */
const agreeing = (same: number, share: number): number => Math.max(0, bits(same, share));
const differing = (same: number, share: number): number => Math.min(0, bits(1 - same, 1 - share));

/** A log may know more than the file, which was named before the take was over; not the other way round. */
function typeBits({ take }: Logged, { types }: Recorded): number {
  if (types.size === 0) return 0;
  const pairs: readonly [string, boolean][] = [
    ['FALSE_START', take.falseStart],
    ['WILD_TRACK', take.kind === 'wild' || take.kind === 'tone'],
    ['PICKUP', take.kind === 'pickup'],
  ];
  const said = pairs.filter(([word]) => types.has(word));
  if (said.length === 0) return 0;
  const { same, other } = CHANCES.type;
  return said.every(([, logged]) => logged) ? bits(same, other) : bits(1 - same, 1 - other);
}

function startBits({ startMs }: Logged, recorded: Recorded, toRecorder: ToRecorder, dayMs: number): number {
  if (startMs === undefined || recorded.startMs === undefined) return 0;
  return handBits(CHANCES.start, startApartMs(toRecorder(startMs), recorded, dayMs), DAY_SPAN_MS);
}

function lengthBits({ lengthMs }: Logged, recorded: Recorded): number {
  if (lengthMs === undefined || recorded.lengthMs === undefined) return 0;
  return handBits(CHANCES.length, Math.abs(lengthApartMs(lengthMs, recorded)), LENGTH_SPAN_MS);
}

/** Two Laplace densities and a flat one against a flat one. */
function handBits(
  { hands, late, astray }: { readonly hands: number; readonly late: number; readonly astray: number },
  apartMs: number,
  spanMs: number,
): number {
  const near = (hands * Math.exp(-apartMs / HANDS_MS)) / (2 * HANDS_MS);
  const far = (late * Math.exp(-apartMs / LATE_MS)) / (2 * LATE_MS);
  return Math.log2((near + far) * spanMs + astray);
}

/** From how many tracks with names that change over the card fit, and how many do not. */
export const trackBits = (fitting: number, others: number): number =>
  Math.max(
    TRACK_BITS.least,
    Math.min(TRACK_BITS.most, fitting * TRACK_BITS.fits + others * TRACK_BITS.differs),
  );

/** From a label of the log to the file's first sample or to the button press, whichever is nearer. */
export function startApartMs(ms: number, { startMs, pressMs }: Recorded, dayMs: number): number {
  const apart = [startMs, pressMs].map((one) => Math.abs(aroundDay(one! - ms, dayMs)));
  return Math.min(...apart);
}
