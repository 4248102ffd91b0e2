import { fail, ok, type Result } from '../shared/result.ts';
import { droppedAt, frameOfLabel, type Label, labelOfFrame } from './label.ts';
import { framesPerDay, type RateId, rateOf } from './rate.ts';
import { modulo, mulDivFloor, requireWhole, wholeMs } from './whole-number.ts';

const two = (value: number): string => String(value).padStart(2, '0');

/**
 * A label as displayed, with `;` before the frames for drop-frame; wraps at 24 hours, negative counts too.
 * `formatTimecode(1800, '29.97DF')` is '00:01:00;02'.
 */
export function formatTimecode(frames: number, rate: RateId): string {
  const label = labelOfFrame(frames, rate);
  const mark = rateOf(rate).dropped === 0 ? ':' : ';';
  return `${two(label.hours)}:${two(label.minutes)}:${two(label.seconds)}${mark}${two(label.frames)}`;
}

export type TimecodePart = 'hours' | 'minutes' | 'seconds' | 'frames';

/** Why a typed timecode was rejected; `text` is the input, cut short, and `at` the index of the character. */
export type TimecodeProblem =
  | { readonly code: 'timecode-empty' }
  | { readonly code: 'timecode-not-read'; readonly text: string; readonly at: number; readonly found: string }
  | { readonly code: 'timecode-too-short'; readonly text: string }
  | { readonly code: 'timecode-too-long'; readonly text: string }
  | {
      readonly code: 'timecode-out-of-range';
      readonly text: string;
      readonly part: TimecodePart;
      readonly value: number;
      readonly max: number;
    }
  | {
      readonly code: 'timecode-dropped';
      readonly text: string;
      readonly rate: RateId;
      readonly next: string;
    };

const PARTS: readonly TimecodePart[] = ['hours', 'minutes', 'seconds', 'frames'];
const shown = (text: string): string => (text.length > 24 ? `${[...text].slice(0, 24).join('')}…` : text);

/** Splits typed digits: '21:32:07' at its marks, '213207' in pairs, '93207' with a single-digit hour. */
function groupsOf(text: string): Result<string[], TimecodeProblem> {
  const marked = text.split(/[:;.,_\- ]/);
  const groups =
    marked.length > 1 ? marked : text.padStart(text.length + (text.length % 2), '0').match(/\d\d/g)!;
  if (groups.length < 2) return fail({ code: 'timecode-too-short', text: shown(text) });
  if (groups.length > PARTS.length || groups.some((group) => group.length > 2))
    return fail({ code: 'timecode-too-long', text: shown(text) });
  return ok(groups);
}

/** Index of the first misplaced character: not a digit, or a mark without a digit on both sides. */
function firstUnreadable(text: string): number {
  return text.search(/[^\d:;.,_\- ]|^[^\d]|[^\d](?!\d)/);
}

function checkRange(label: Label, rate: RateId, text: string): Result<Label, TimecodeProblem> {
  const max: Label = { hours: 23, minutes: 59, seconds: 59, frames: rateOf(rate).base - 1 };
  for (const part of PARTS) {
    if (label[part] > max[part])
      return fail({ code: 'timecode-out-of-range', text, part, value: label[part], max: max[part] });
  }
  return ok(label);
}

/**
 * Frames since 00:00:00:00 of a typed label. Seconds, frames and marks may be omitted, and any mark will do:
 * '213207', '21:32', '21:32:07', '21.32.07.12' and '9:32:07;12' are all accepted. Invalid text, numbers out
 * of range and labels that drop-frame skips return a `TimecodeProblem`; nothing is guessed.
 * `parseTimecode('00:01:00;02', '29.97DF')` holds 1800.
 */
export function parseTimecode(input: string, rate: RateId): Result<number, TimecodeProblem> {
  const text = input.slice(0, 100).normalize('NFKC').trim();
  if (text === '') return fail({ code: 'timecode-empty' });
  const at = firstUnreadable(text);
  if (at >= 0) {
    const found = String.fromCodePoint(text.codePointAt(at)!);
    return fail({ code: 'timecode-not-read', text: shown(text), at, found });
  }
  const groups = groupsOf(text);
  if (!groups.ok) return groups;
  const [hours = 0, minutes = 0, seconds = 0, typedFrames] = groups.value.map(Number);
  // A second typed without frames means its first frame, which drop-frame may number 2 or 4.
  const firstFrame = droppedAt(rateOf(rate), minutes, seconds);
  const label = { hours, minutes, seconds, frames: typedFrames ?? firstFrame };
  const inRange = checkRange(label, rate, text);
  if (!inRange.ok) return inRange;
  if (label.frames < firstFrame) {
    const next = formatTimecode(frameOfLabel({ ...label, frames: firstFrame }, rate), rate);
    return fail({ code: 'timecode-dropped', text, rate, next });
  }
  return ok(frameOfLabel(label, rate));
}

/** The frame `delta` frames later, or earlier if negative, wrapped at 24 hours. At 25, 2159999 + 1 is 0. */
export const addFrames = (frames: number, delta: number, rate: RateId): number =>
  modulo(requireWhole(frames, 'frames') + requireWhole(delta, 'delta'), framesPerDay(rate));

/** Frames from `start` to `end`; an earlier end is taken to be past midnight. Always less than a day. */
export const framesBetween = (start: number, end: number, rate: RateId): number =>
  addFrames(end, -start, rate);

/**
 * The real milliseconds of so many frames, rounded down: `framesToMs(24, '23.976')` is 1001. Negative counts
 * stay negative.
 */
export function framesToMs(frames: number, rate: RateId): number {
  const { num, den } = rateOf(rate);
  return mulDivFloor(requireWhole(frames, 'frames'), den * 1000, num);
}

/** Whole frames in real milliseconds, rounded down: `msToFrames(1001, '23.976')` is 24, and 1000 is 23. */
export function msToFrames(ms: number, rate: RateId): number {
  const { num, den } = rateOf(rate);
  return mulDivFloor(wholeMs(ms), num, den * 1000);
}
