import { fail, ok, type Result } from '../../shared/result.ts';
import { cellKind, cellsAt, numberIn } from './cast-cells.ts';
import { type Columns, columnsOf, isHeading, isRule, orderNamed } from './cast-columns.ts';
import { type Names, readCastLine } from './cast-line.ts';
import { hasLetter, isUpper, tidyName, withoutUnseen, wordsOf } from './cast-names.ts';
import type { Order } from './cast-order.ts';

/** Limits of what is read; anything beyond is returned unread. The last two are the limits of a voice. */
export const CAST_LIST_LIMITS = {
  entries: 200,
  lines: 2000,
  lineLength: 500,
  name: 200,
  number: 20,
} as const;

/** A performer from a call-sheet line; `line` counts from 1. */
export interface CastEntry {
  readonly number: string;
  readonly part: string;
  readonly person: string;
  readonly line: number;
  /** False if it was guessed which name is the part, or where one ends and the next begins. */
  readonly sure: boolean;
}

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
  readonly entries: readonly CastEntry[];
  readonly unread: readonly UnreadLine[];
  /** Numbers of lines that only name a column or a section, or are ornament. */
  readonly headings: readonly number[];
}

interface Found {
  readonly line: number;
  readonly text: string;
  readonly names: Names;
  /** From the heading above. */
  readonly order: Order | null;
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
export function readCastList(text: string): CastList {
  const sorted: Sorted = { found: [], unread: [], headings: [], columns: null, order: null };
  for (const [index, raw] of text.split(/\r\n|[\n\r\u2028\u2029]/).entries())
    sortLine(sorted, raw, index + 1);
  const usual = usualOrder(sorted.found);
  const entries: CastEntry[] = [];
  for (const found of sorted.found) {
    const entry = entryOf(found, usual);
    const why = tooLong(entry);
    if (why) sorted.unread.push({ line: found.line, text: found.text, why });
    else entries.push(entry);
  }
  const unread = sorted.unread.sort((one, other) => one.line - other.line);
  return { entries, unread, headings: sorted.headings };
}

function sortLine(sorted: Sorted, text: string, line: number): void {
  if (isBlank(text)) return;
  const beyond = beyondLimits(text, line, sorted.found.length);
  if (beyond) sorted.unread.push({ line, text, why: beyond });
  else if (isRule(text)) sorted.headings.push(line);
  else if (!takeHeading(sorted, withoutUnseen(text), line)) {
    const read = readLine(withoutUnseen(text), sorted);
    if (read.ok) sorted.found.push({ line, text, ...read.value });
    else sorted.unread.push({ line, text, why: read.problem.code as UnreadReason });
  }
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

function readLine(text: string, { columns, order }: Sorted): Result<Pick<Found, 'names' | 'order'>> {
  const row = columns && readRow(text, columns);
  const read = row ?? readCastLine(text.replace(BULLET, ''));
  // An undelimited line does not belong under a delimited heading.
  const outside = !row && columns !== null && columns.delimiter !== 'spaces';
  return read.ok ? ok({ names: read.value, order: outside ? null : order }) : read;
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
  });
}

/** One word in capitals as the performer and two as the part: somebody swapped the columns. */
const isTurnedRound = (part: string, person: string): boolean =>
  isUpper(person) && !isUpper(part) && wordsOf(person).length === 1 && wordsOf(part).length === 2;

/** The order most lines agree on; `agreed` if enough of them do to trust one more likely line. */
interface Usual {
  readonly order: Order | null;
  readonly agreed: boolean;
}

function usualOrder(found: readonly Found[]): Usual {
  const pairs = found
    .map(({ names }) => names)
    .filter(({ second, order }) => second !== '' && order !== null);
  const looks = agreed(pairs.filter(({ sign }) => sign === 'looks'));
  const all = agreed(pairs);
  return { order: all.order ?? looks.order, agreed: looks.count >= 2 || all.count >= 3 };
}

function agreed(names: readonly Names[]): { order: Order | null; count: number } {
  const [first] = names;
  const agree = first !== undefined && names.every(({ order }) => order === first.order);
  return agree ? { order: first.order, count: names.length } : { order: null, count: 0 };
}

function entryOf({ line, names, order: named }: Found, usual: Usual): CastEntry {
  const order = names.sign === 'worded' ? names.order : (named ?? names.order ?? usual.order);
  const turned = order === 'person-first' && names.second !== '';
  const [part, person] = turned ? [names.second, names.first] : [names.first, names.second];
  // Names that contradict their heading are left for a person to check.
  const contrary = named !== null && names.order !== null && names.sign !== 'worded' && names.order !== named;
  const believed = named !== null || (names.sign === 'likely' && usual.agreed && order === usual.order);
  const known = names.second === '' || names.sign === 'worded' || names.sign === 'looks' || believed;
  return {
    number: names.number,
    part: tidyName(part),
    person: tidyName(person),
    line,
    sure: names.clear && known && !contrary,
  };
}

function tooLong({ number, part, person }: CastEntry): UnreadReason | null {
  if (number.length > CAST_LIST_LIMITS.number) return 'number-too-long';
  return Math.max(part.length, person.length) > CAST_LIST_LIMITS.name ? 'name-too-long' : null;
}
