import { readStrip } from '../scenes/cast-strip.ts';
import { type CallTimes, NO_TIMES, timesInLine } from './call-times.ts';

/** Cast numbers without a name. */
export interface NumbersOnly {
  readonly numbers: readonly string[];
  readonly times: CallTimes;
}

const STRIP = /^[#\d\s,;&+a-z–-]+$/i;
const NUMBERED = /^#?(\d{1,3}[a-z]?)[.):]?\s*(?=[\s\t;,|])(.*)$/i;
/** Between the number and the times stand at most marks like SWF. */
const MARKS = /^(?:[\s\t;,|]|[A-Z]{1,3}(?![A-Za-z])|\d{1,2}[:.h]?\d{2}(?!\d))*$/;

/**
 * The cast numbers of a line that names nobody: `'1, 2, 5'`, or one number with its times, `'5 SWF 0630 0715'`.
 * Null for any other line. A number alone may be that of a page.
 */
export function numbersOnly(text: string): NumbersOnly | null {
  const line = text.trim();
  const row = NUMBERED.exec(line);
  const times = row && MARKS.test(row[2]!) ? timesInLine(row[2]!) : NO_TIMES;
  if (row && times.onSet !== '') return { numbers: [row[1]!], times };
  const { cast, crowd } = STRIP.test(line) ? readStrip(line) : { cast: [], crowd: '' };
  const isNumbers = cast.length > 1 && crowd === '' && cast.every((one) => /^\d{1,3}[a-z]?$/i.test(one));
  return isNumbers ? { numbers: cast, times: NO_TIMES } : null;
}
