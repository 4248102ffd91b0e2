import { fail, ok, type Result } from '../../shared/result.ts';
import { cellKind, cellsAt, numberIn } from '../cells/sheet-cells.ts';
import { hasLetter, isUpper, withoutUnseen, wordsOf } from '../cells/sheet-names.ts';
import { timesInColumns, timesInLine } from './call-times.ts';
import { type Columns, columnsOf, isHeading, isRule, orderNamed } from './cast-columns.ts';
import {
  type CastEntry,
  entryOf,
  type Found,
  type Read,
  type SheetPerformer,
  usualOrder,
} from './cast-entry.ts';
import { type Names, readCastLine } from './cast-line.ts';
import type { Order } from './cast-order.ts';

/** Limits of what is read; anything beyond is returned unread. The last two are the limits of a voice. */
export const CAST_LIST_LIMITS = {
  entries: 200,
  lines: 2000,
  lineLength: 500,
  name: 200,
  number: 20,
} as const;

export type UnreadReason =
  | 'no-name'
  | 'not-understood'
  | 'line-too-long'
  | 'name-too-long'
  | 'number-too-long'
  | 'too-many';

export interface UnreadLine {
  readonly line: number;
  /** The line as it was pasted. */
  readonly text: string;
  readonly why: UnreadReason;
}

/** Every non-blank line is in exactly one of the three lists. */
export interface CastList {
  readonly entries: readonly SheetPerformer[];
  readonly unread: readonly UnreadLine[];
  /** Numbers of lines that only name a column or a section, or are ornament. */
  readonly headings: readonly number[];
}

/** A line of a sheet; `isStrict`: among other things, so that only a number beside a name makes a performer. */
export interface SheetLine {
  readonly line: number;
  readonly text: string;
  readonly isStrict?: boolean;
}

/** Lines sorted so far, and what the last heading said. */
interface Sorted {
  readonly found: Found[];
  readonly unread: UnreadLine[];
  readonly headings: number[];
  columns: Columns | null;
  order: Order | null;
}

/**
 * Parses pasted call-sheet lines: number, part and name, delimited or not, in any arrangement, with or
 * without column headings. Call times, status letters and contacts are left out. `'1. INES - Anna Berg'`
 * gives number '1', part 'Ines', person 'Anna Berg', sure.
 */
export const readCastList = (text: string): CastList =>
  readCastLines(text.split(/\r\n|[\n\r\u2028\u2029]/).map((raw, index) => ({ line: index + 1, text: raw })));

/** Parses the lines of a sheet that may be performers. */
export function readCastLines(lines: readonly SheetLine[]): CastList {
  const sorted: Sorted = { found: [], unread: [], headings: [], columns: null, order: null };
  for (const one of lines) sortLine(sorted, one);
  const usual = usualOrder(sorted.found);
  const entries: SheetPerformer[] = [];
  for (const found of sorted.found) {
    const entry = entryOf(found, usual);
    const why = tooLong(entry);
    if (why) sorted.unread.push({ line: found.line, text: found.text, why });
    else entries.push(entry);
  }
  const unread = sorted.unread.sort((one, other) => one.line - other.line);
  return { entries, unread, headings: sorted.headings };
}

function sortLine(sorted: Sorted, { line, text, isStrict = false }: SheetLine): void {
  if (isBlank(text)) return;
  const beyond = beyondLimits(text, line, sorted.found.length);
  if (beyond) sorted.unread.push({ line, text, why: beyond });
  else if (isRule(text)) sorted.headings.push(line);
  else if (!takeHeading(sorted, withoutUnseen(text), line)) {
    const read = readLine(withoutUnseen(text), sorted);
    if (addToLast(sorted, withoutUnseen(text), line, read)) return;
    if (read.ok && !(isStrict && isDoubtful(read.value)))
      sorted.found.push({ line, text, more: [], ...read.value });
    else
      sorted.unread.push({
        line,
        text,
        why: read.ok ? 'not-understood' : (read.problem.code as UnreadReason),
      });
  }
}

/** Beside scenes and crew, a name without a number or without company can be anything. */
function isDoubtful({ names, times, isApart }: Read): boolean {
  const isTold = names.sign === 'looks' || names.sign === 'worded' || times.onSet !== '' || isApart;
  return names.number === '' || !isTold || (names.second === '' && times.onSet === '');
}

/** The second line of a row: its times, or the name below the part, further in than the row itself. */
function addToLast(sorted: Sorted, text: string, line: number, read: Result<Read>): boolean {
  const last = sorted.found.at(-1);
  if (!last || line !== last.line + last.more.length + 1 || last.more.length > 1) return false;
  const more = [...last.more, line];
  const times = timesInLine(text);
  if (!read.ok) {
    const isFresh = last.times.onSet === '' && last.times.pickUp === '' && times.onSet + times.pickUp !== '';
    if (read.problem.code !== 'no-name' || !isFresh || /^\s*\d{1,3}(?:\s|$)/.test(text)) return false;
    sorted.found[sorted.found.length - 1] = { ...last, times, more };
    return true;
  }
  const { names } = read.value;
  const isName = names.number === '' && names.second === '' && /^(?:\s{2,}|\t)/.test(text);
  if (!isName || last.names.number === '' || last.names.second !== '') return false;
  const whole: Names = {
    ...last.names,
    second: names.first,
    order: 'part-first',
    sign: 'likely',
    clear: false,
  };
  const isTimed = times.onSet !== '' || times.pickUp !== '';
  sorted.found[sorted.found.length - 1] = {
    ...last,
    names: whole,
    times: isTimed ? times : last.times,
    more,
  };
  return true;
}

const isBlank = (text: string): boolean =>
  withoutUnseen(text.slice(0, 1000)).trim() === '' && !text.slice(1000).trim();

function beyondLimits(text: string, line: number, found: number): UnreadReason | null {
  if (line > CAST_LIST_LIMITS.lines || found >= CAST_LIST_LIMITS.entries) return 'too-many';
  return text.length > CAST_LIST_LIMITS.lineLength ? 'line-too-long' : null;
}

function takeHeading(sorted: Sorted, text: string, line: number): boolean {
  const columns = columnsOf(text);
  if (!columns && !isHeading(text)) return false;
  sorted.headings.push(line);
  sorted.columns = columns ?? sorted.columns;
  sorted.order = (columns ? orderOfColumns(columns) : orderNamed(text)) ?? sorted.order;
  return true;
}

function orderOfColumns({ part: [part], person: [person] }: Columns): Order | null {
  if (part === undefined || person === undefined) return null;
  return part < person ? 'part-first' : 'person-first';
}

const BULLET = /^\s*(?:[•·▪◦‣●○■□☐☑✓✔]\s*|[*>–—-]\s+|\[[ x]\]\s*)+(?=\S)/iu;

function readLine(text: string, { columns, order }: Sorted): Result<Read> {
  const row = columns && readRow(text, columns);
  const read = row ?? readCastLine(text.replace(BULLET, ''));
  // An undelimited line does not belong under a delimited heading.
  const outside = !row && columns !== null && columns.delimiter !== 'spaces';
  if (!read.ok) return read;
  const times = row ? timesInColumns(text, columns!) : timesInLine(text);
  const isApart = /\S(?:\t|\s*[;|]|\s{2,})\s*\S|^\s*\d+[.)]\s.*\s[-–—=]\s/.test(text);
  return ok({ names: read.value, times, isApart, order: outside ? null : order });
}

/** A row under named columns; null if the line does not have these columns. */
function readRow(text: string, columns: Columns): Result<Names> | null {
  const cells = cellsAt(text, columns.delimiter);
  if (cells.length < 2 || (columns.delimiter === 'spaces' && cells.length !== columns.width)) return null;
  const at = (index: number): string => {
    const cell = cells[index] ?? '';
    return cellKind(cell) === 'aside' ? '' : cell;
  };
  const join = (places: readonly number[]) => places.map(at).filter(Boolean).join(' ');
  const [first, second] = [join(columns.part), join(columns.person)];
  if (!hasLetter(first + second)) return fail({ code: 'no-name' });
  const number = cells[columns.number] ?? '';
  return ok({
    number: numberIn(number) || (/[\p{L}\p{N}]/u.test(number) ? number : ''),
    first,
    second,
    order: 'part-first',
    sign: 'worded',
    clear: !isTurnedRound(first, second),
    isRow: true,
  });
}

/** One word in capitals as the performer and two as the part: somebody swapped the columns. */
const isTurnedRound = (part: string, person: string): boolean =>
  isUpper(person) && !isUpper(part) && wordsOf(person).length === 1 && wordsOf(part).length === 2;

function tooLong({ number, part, person }: CastEntry): UnreadReason | null {
  if (number.length > CAST_LIST_LIMITS.number) return 'number-too-long';
  return Math.max(part.length, person.length) > CAST_LIST_LIMITS.name ? 'name-too-long' : null;
}
