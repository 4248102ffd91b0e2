import Papa from 'papaparse';

/**
 * What a cell of a cast list can be on its own. `aside` is what the cast does not need: times, status
 * letters, contacts.
 */
export type CellKind = 'empty' | 'number' | 'aside' | 'text';

const CLOCK = String.raw`(?:[01]?\d|2[0-3])[:.h][0-5]\d(?:\s*[ap]\.?m?\.?)?`;
const BARE_CLOCK = String.raw`(?:[01]\d|2[0-3])[0-5]\d(?:\s*h(?:rs?)?)?`;
const HOUR = String.raw`(?:1[0-2]|0?[1-9])\s*[ap]\.?m\.?`;
const TIME = `(?:${CLOCK}|${BARE_CLOCK}|${HOUR})`;
// On call, will notify, to be advised, not applicable: what appears in place of a time.
const NO_TIME = String.raw`(?:o\/c|w\/n|n\/a|tb[acd]|t\.b\.[acd]\.?|on call|will notify|per a\.?d\.?|on set|hold)`;
const DASHES = '(?:[-–—]+|✓|✔|x)';

const ASIDE = new RegExp(`^(?:${TIME}(?:\\s*[-–]\\s*${TIME})?|${NO_TIME}|${DASHES})$`, 'i');
const TIMES_WITHIN = new RegExp(`(?<=^|\\s)(?:${TIME}|${NO_TIME})(?=[\\s,;]|$)`, 'gi');
// Start, work, hold, finish, rehearse, travel, drop, pick up: letters from day-out-of-days charts.
const CLOCK_WITHIN = new RegExp(`(?<=^|[\\s(])${TIME}(?=[\\s,;)]|$)`, 'gi');
const STATUS = new Set(
  'W SW WF SWF H R T S F D SF WD SWD HF HW WH SH TW WT RW PW PU PUW PWF SR SWT WFT SWFT'.split(' '),
);
const NUMBER =
  /^(?:#|№|no\.?|nr\.?|cast\s*#?|\(|\[)?\s*(\d{1,4}(?:\.\d)?[a-z]?(?:[-–]\d{1,4})?)\s*[.)\]:]?$/i;
const CONTACT = /^\S+@\S+\.\S+$|^\+?[\d\s()./-]{7,}$/;

export const isStatus = (text: string): boolean => STATUS.has(text);

export function cellKind(cell: string): CellKind {
  if (cell === '') return 'empty';
  if (ASIDE.test(cell) || isStatus(cell)) return 'aside';
  if (NUMBER.test(cell)) return 'number';
  return CONTACT.test(cell) ? 'aside' : 'text';
}

/** The clock times in a text, in their order. */
export const clockTimesIn = (text: string): string[] => text.match(CLOCK_WITHIN) ?? [];

/** The cast number in a cell of kind `number`: '101.' is '101', '(1A)' is '1A'. */
export const numberIn = (cell: string): string => NUMBER.exec(cell)?.[1] ?? '';

/** The text without times and the status letters beside them. */
export function withoutTimes(text: string): string {
  const rest = text.replace(TIMES_WITHIN, ' ').replace(/\s+/g, ' ').trim();
  const hadTimes = rest !== text.replace(/\s+/g, ' ').trim();
  const words = rest.split(' ');
  // Without a time beside it, a single letter is more likely an initial.
  const isAside = (word: string | undefined) =>
    word !== undefined && (isStatus(word) || /^[-–—]+$/.test(word)) && (hadTimes || word.length > 1);
  while (words.length > 1 && isAside(words.at(-1))) words.pop();
  while (words.length > 1 && isAside(words[0]) && words[0]!.length > 1) words.shift();
  return words.join(' ');
}

export type Delimiter = '\t' | ';' | '|' | 'spaces' | ',';
export const DELIMITERS: readonly Delimiter[] = ['\t', ';', '|', 'spaces', ','];

/** The cells of a line, trimmed, with quoting as in RFC 4180 section 2. */
export function cellsAt(line: string, delimiter: Delimiter): string[] {
  const cells = delimiter === 'spaces' ? line.trim().split(/\s{2,}/) : delimitedCells(line, delimiter);
  return cells.map((cell) => cell.replace(/\s+/g, ' ').trim());
}

function delimitedCells(line: string, delimiter: string): string[] {
  if (!line.includes('"') || !line.includes(delimiter)) return line.split(delimiter);
  const { data, errors } = Papa.parse<string[]>(line, { delimiter, newline: '\n' });
  // A quote that does not enclose a whole cell belongs to a name and must not swallow the delimiters after
  // it.
  const isQuoted = !errors.some(({ type }) => type === 'Quotes');
  return isQuoted ? (data[0] ?? [line]) : line.split(delimiter);
}
