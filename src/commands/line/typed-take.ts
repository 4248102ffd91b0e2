import { countableRate } from '../../day/header.ts';
import type { Day, Open, Take, TakeId, TakeKind, TakeSlate } from '../../day/model.ts';
import { rateSaidAt, settingsBefore } from '../../day/settings/settings.ts';
import { parseSlate, sceneText, slateText } from '../../day/slate.ts';
import { isSlated } from '../../day/takes.ts';
import type { TakeFields } from '../../facts/kinds/take-logged.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import { formatLength, parseLength } from '../../time/length.ts';
import type { RateId } from '../../time/rate.ts';
import { formatTimecode, parseTimecode } from '../../time/timecode.ts';

/** A take as typed: text in every field, empty if unknown. */
export interface TypedTake {
  readonly kind: Open<TakeKind>;
  /** The style of its slate. */
  readonly style: TakeSlate['style'];
  readonly slate: string;
  readonly scene: string;
  readonly number: string;
  readonly start: string;
  readonly length: string;
  readonly file: string;
}

/** The fields of a form, from a take or from what comes next. */
export function typedFrom(take: Pick<Take, 'kind' | 'slate' | 'number'> & Partial<Take>): TypedTake {
  return {
    kind: take.kind,
    style: take.slate.style,
    slate: slateText(take.slate),
    scene: sceneText(take.slate),
    number: String(take.number),
    start: take.start ? formatTimecode(take.start.frames, take.start.rate) : '',
    length: take.length ? formatLength(take.length.frames, take.length.rate) : '',
    file: take.file ?? '',
  };
}

/**
 * The rate for typed times of a take: what the line says for it, or its own, or else the day's; null if
 * unknown to this version. A take that is not logged yet goes `before` another, or to the end.
 */
export const rateOfTake = (day: Day, take: Partial<Take>, before?: TakeId): RateId | null =>
  (take.id && rateSaidAt(day, take.id)) ||
  (take.start?.rate ?? take.length?.rate ?? countableRate(settingsBefore(day, take.id ?? before)));

/**
 * Reads what was typed compared with what the form `showed`: untouched fields are left alone, so nothing is
 * reinterpreted. Fails on the first unreadable field; an empty start or length is fine.
 */
export function readTypedTake(typed: TypedTake, showed: TypedTake, rate: RateId | null): Result<TakeFields> {
  const fields: { -readonly [Field in keyof TakeFields]: TakeFields[Field] } = {};
  if (typed.kind !== showed.kind) fields.kind = typed.kind;
  const { style, slate: slateShown } = showed;
  // Wild tracks and room tones keep their nearby slate without being asked for one.
  const board = isSlated(typed.kind) ? typed : { ...typed, style, slate: slateShown };
  if (isAnotherSlate(board, showed)) {
    // A slate in a style this version cannot read is retyped as a lettered one.
    const style = board.style === 'unread' ? 'lettered' : board.style;
    const slate = parseSlate(board.slate, style, board.scene);
    if (!slate.ok) return slate;
    fields.slate = slate.value;
  }
  if (typed.number !== showed.number) {
    const number = typed.number.trim();
    if (!/^\d{1,4}$/.test(number) || Number(number) < 1)
      return fail({ code: 'take-number', typed: typed.number });
    fields.number = Number(number);
  }
  for (const [field, parse] of [
    ['start', parseTimecode],
    ['length', parseLength],
  ] as const) {
    if (typed[field] === showed[field]) continue;
    if (typed[field].trim() === '') {
      fields[field] = null;
      continue;
    }
    if (!rate) return fail({ code: 'rate-unknown' });
    const read = parse(typed[field], rate);
    if (!read.ok) return read;
    fields[field] = { frames: read.value, rate };
  }
  if (typed.file !== showed.file) {
    const file = typed.file.trim();
    if (file.length > 200) return fail({ code: 'file-name-too-long', longest: 200 });
    fields.file = file === '' ? null : file;
  }
  return ok(fields);
}

/** A lettered slate contains its scene. */
const isAnotherSlate = (typed: TypedTake, showed: TypedTake): boolean =>
  typed.style !== showed.style ||
  typed.slate !== showed.slate ||
  (typed.style === 'numbered' && typed.scene !== showed.scene);
