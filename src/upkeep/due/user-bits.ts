import { fail, ok, type Result } from '../../shared/result.ts';

/** A calendar date with a two-digit year and the two digits that are not the date, such as a zone code. */
export interface UserBitsDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly rest: string;
}

export type UserBitsForm = 'st-309' | 'year-month-day' | 'month-day-year' | 'day-month-year';

export interface UserBitsReading extends UserBitsDate {
  readonly form: UserBitsForm;
}

const two = (value: number): string => String(value).padStart(2, '0');

/**
 * Eight hex digits, upper case, from typed or stored text; ignores spaces, colons, dashes, dots and a leading
 * `$`. Example: `$12 31 18 01` gives `12311801`.
 */
function parseUserBits(text: string): Result<string> {
  const digits = text.replace(/[\s:.$-]/g, '').toUpperCase();
  return /^[0-9A-F]{8}$/.test(digits) ? ok(digits) : fail({ code: 'not-user-bits', text });
}

/**
 * The date form of SMPTE ST 309, printed group 8 first: zone code, year, month, day. `year` may have four
 * digits; two are kept. Example: 7 October 2026, zone code `00`, gives `00261007`.
 */
export function dateUserBits(
  date: { readonly year: number; readonly month: number; readonly day: number },
  zoneCode = '00',
): Result<string> {
  const { year, month, day } = date;
  if (!Number.isInteger(year) || year < 0 || !isDate(year, month, day)) {
    return fail({ code: 'not-a-date', year: String(year), month: String(month), day: String(day) });
  }
  if (!/^[0-9A-Fa-f]{2}$/.test(zoneCode)) return fail({ code: 'not-a-zone-code', zoneCode });
  return ok(zoneCode.toUpperCase() + two(year % 100) + two(month) + two(day));
}

/**
 * Every date the digits could mean, ST 309 first; empty if none fits. The user picks: orders differ between
 * machines, and the digits do not say which. Example: `12311801` reads as 31 December 18 with `01` left over,
 * month-day-year.
 */
export function userBitsReadings(bits: string): Result<readonly UserBitsReading[]> {
  const parsed = parseUserBits(bits);
  if (!parsed.ok) return parsed;
  const [a, b, c, d] = [0, 2, 4, 6].map((at) => parsed.value.slice(at, at + 2)) as [
    string,
    string,
    string,
    string,
  ];
  return ok(
    [
      reading('st-309', b, c, d, a),
      reading('year-month-day', a, b, c, d),
      reading('month-day-year', c, a, b, d),
      reading('day-month-year', c, b, a, d),
    ].filter((found) => found !== undefined),
  );
}

function reading(
  form: UserBitsForm,
  year: string,
  month: string,
  day: string,
  rest: string,
): UserBitsReading | undefined {
  if (![year, month, day].every((pair) => /^\d\d$/.test(pair))) return undefined;
  const date = { year: Number(year), month: Number(month), day: Number(day) };
  return isDate(2000 + date.year, date.month, date.day) ? { form, ...date, rest } : undefined;
}

function isDate(year: number, month: number, day: number): boolean {
  if (!Number.isInteger(month) || !Number.isInteger(day) || month < 1 || month > 12 || day < 1) return false;
  const isLeap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const lengths = [31, isLeap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return day <= lengths[month - 1]!;
}
