const DAY_MS = 86_400_000;

const isoOf = (ms: number): string => new Date(ms).toISOString().slice(0, 10);

/** The date at `zone` minutes east of UTC: `dateAt(Date.UTC(2026, 4, 4, 23), 120)` is `'2026-05-05'`. */
export const dateAt = (atMs: number, zone: number): string => isoOf(atMs + zone * 60_000);

/** The next date, `'2026-06-01'` after `'2026-05-31'`; undefined if there is none. */
export function nextDate(date: string): string | undefined {
  const ms = Date.parse(`${date}T00:00:00Z`);
  if (Number.isNaN(ms) || isoOf(ms) !== date) return undefined;
  const next = isoOf(ms + DAY_MS);
  // Years after 9999 start with a sign.
  return next.startsWith('+') ? undefined : next;
}

const LONGEST = 200;
const ISO_DATE = /\b\d{4}-\d\d-\d\d\b/;
/** Other date formats. Whether 04/05 is in May or April is not ours to guess. */
const OTHER_DATE =
  /\b\d{1,4}[./]\d{1,2}[./]\d{1,4}\b|\b\d{1,2}\.? \p{L}{3,}\.? \d{4}\b|\b\p{L}{3,}\.? \d{1,2},? \d{4}\b/u;
/** The number after the word for a shooting day. */
const NAMED = /(\b(?:days?|nights?) ?#?)(\d+)/i;
/** The number before a total. */
const BEFORE_TOTAL = /()(\d+)(?= ?\/ ?\d| (?:of|von|sur|di|de|van|av) \d)/i;
const LAST = /()(\d+)(?!.*\d)/;

/**
 * The label of the next day: `'Day 4 of 40'` after `'Day 3 of 40'`, `'Day 08'` after `'Day 07'`, and
 * `'2026-06-01'` after `'2026-05-31'`. A label without a number, or with another date format, stays as it is.
 */
export function nextLabel(label: string): string {
  const isDated = ISO_DATE.test(label);
  if (!isDated && OTHER_DATE.test(label)) return label;
  const dated = label.replace(ISO_DATE, (date) => nextDate(date) ?? date);
  const count = [NAMED, ...(isDated ? [] : [BEFORE_TOTAL, LAST])].find((one) => one.test(dated));
  const next = count ? dated.replace(count, (_, before, number) => before + oneMore(number)) : dated;
  return next.length > LONGEST ? label : next;
}

/** Keeps leading zeros. A number too long to be a count stays as it is. */
const oneMore = (number: string): string =>
  number.length > 9 ? number : `${Number(number) + 1}`.padStart(number.length, '0');
