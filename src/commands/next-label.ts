import { nextDate } from './next-date.ts';

const LONGEST = 200;
const ISO_DATE = /\b\d{4}-\d\d-\d\d\b/;
/** Dates written otherwise. Whether 04/05 is in May or in April is not ours to guess. */
const OTHER_DATE =
  /\b\d{1,4}[./]\d{1,2}[./]\d{1,4}\b|\b\d{1,2}\.? \p{L}{3,}\.? \d{4}\b|\b\p{L}{3,}\.? \d{1,2},? \d{4}\b/u;
/** The number after the word for a shooting day. */
const NAMED = /(\b(?:days?|nights?) ?#?)(\d+)/i;
/** The number that a total follows. */
const BEFORE_TOTAL = /()(\d+)(?= ?\/ ?\d| (?:of|von|sur|di|de|van|av) \d)/i;
const LAST = /()(\d+)(?!.*\d)/;

/**
 * The label of the day after: `'Day 3 of 40'` is followed by `'Day 4 of 40'`, `'Day 07'` by `'Day 08'`, and
 * `'2026-05-31'` by `'2026-06-01'`. A label without a number, or with a date in another form, stays as it is.
 */
export function nextLabel(label: string): string {
  const isDated = ISO_DATE.test(label);
  if (!isDated && OTHER_DATE.test(label)) return label;
  const dated = label.replace(ISO_DATE, (date) => nextDate(date) ?? date);
  const count = [NAMED, ...(isDated ? [] : [BEFORE_TOTAL, LAST])].find((one) => one.test(dated));
  const next = count ? dated.replace(count, (_, before, number) => before + oneMore(number)) : dated;
  return next.length > LONGEST ? label : next;
}

/** As wide as it was, where it was filled up with noughts. What is too long to be a count stays as it is. */
const oneMore = (number: string): string =>
  number.length > 9 ? number : `${Number(number) + 1}`.padStart(number.length, '0');
