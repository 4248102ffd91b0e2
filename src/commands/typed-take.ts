import type { Day, Slate, Take, TakeKind } from '../day/model.ts';
import { parseSlate, sceneText, slateText } from '../day/slate.ts';
import type { TakeFields } from '../facts/take-logged.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import { type RateId, rateOf } from '../time/rate.ts';
import { formatTimecode, framesToMs, parseTimecode } from '../time/timecode.ts';

/** A take as it is typed: text in every field, empty where nothing is known. */
export interface TypedTake {
  readonly kind: TakeKind;
  readonly slate: string;
  readonly scene: string;
  readonly number: string;
  readonly start: string;
  readonly length: string;
  readonly file: string;
}

/** The fields of a form, filled from a take or from what comes next. */
export function typedFrom(take: Pick<Take, 'kind' | 'slate' | 'number'> & Partial<Take>): TypedTake {
  return {
    kind: take.kind,
    slate: slateText(take.slate),
    scene: sceneText(take.slate),
    number: String(take.number),
    start: take.start ? formatTimecode(take.start.frames, take.start.rate) : '',
    length: take.length ? typedLength(take.length.frames, take.length.rate) : '',
    file: take.file ?? '',
  };
}

/** Minutes, seconds and frames, exactly: `'1:52:06'` is 1 minute 52 seconds 6 frames. */
function typedLength(frames: number, rate: RateId): string {
  const { base } = rateOf(rate);
  const two = (value: number): string => String(value).padStart(2, '0');
  const seconds = Math.floor(frames / base);
  const odd = frames % base;
  return `${Math.floor(seconds / 60)}:${two(seconds % 60)}${odd > 0 ? `:${two(odd)}` : ''}`;
}

/** Reads what was typed. Fails with the first field that cannot be read; an empty start or length is no failure. */
export function readTypedTake(day: Day, typed: TypedTake): Result<TakeFields> {
  const slate = slateOf(day, typed);
  if (!slate.ok) return slate;
  const number = Number(typed.number.trim());
  if (!/^\d{1,4}$/.test(typed.number.trim()) || number < 1)
    return fail({ code: 'take-number', typed: typed.number });
  const rate = day.header.timecodeRate;
  const start = typed.start.trim() === '' ? ok(null) : parseTimecode(typed.start, rate);
  if (!start.ok) return start;
  const length = typed.length.trim() === '' ? ok(null) : parseLength(typed.length, rate);
  if (!length.ok) return length;
  const file = typed.file.trim();
  if (file.length > 200) return fail({ code: 'file-name-too-long', longest: 200 });
  return ok({
    kind: typed.kind,
    slate: slate.value,
    number,
    start: start.value === null ? null : { frames: start.value, rate },
    length: length.value === null ? null : { frames: length.value, rate },
    file: file === '' ? null : file,
  });
}

const slateOf = (day: Day, typed: TypedTake): Result<Slate> =>
  typed.kind === 'wild' || typed.kind === 'tone'
    ? parseSlate(typed.slate === '' ? '1' : typed.slate, day.header.slateStyle, typed.scene)
    : parseSlate(typed.slate, day.header.slateStyle, typed.scene);

/**
 * Reads a length as minutes and seconds (`'1:52'`), with hours before or frames after (`'1:02:10:00'`, `'1:52:06'`),
 * or as bare seconds (`'45'`). A count of frames at the rate.
 */
export function parseLength(typed: string, rate: RateId): Result<number> {
  const parts = typed.trim().split(/[:.;]/);
  const { base } = rateOf(rate);
  if (parts.length > 4 || parts.some((part) => !/^\d{1,4}$/.test(part))) {
    return fail({ code: 'length-unread', typed });
  }
  const numbers = parts.map(Number);
  const [frames = 0] = parts.length >= 3 ? numbers.splice(-1) : [];
  const seconds = numbers.reduce((sum, part) => sum * 60 + part, 0);
  if (frames >= base) return fail({ code: 'length-unread', typed });
  const total = seconds * base + frames;
  if (framesToMs(total, rate) > 86_400_000) return fail({ code: 'length-too-long', typed });
  return ok(total);
}
