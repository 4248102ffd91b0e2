import { cellKind, cellsAt, DELIMITERS, type Delimiter } from '../cells/sheet-cells.ts';
import { wordsOf } from '../cells/sheet-names.ts';
import { HEADING_WORDS, plain, ROLE_OF, type Role, SURE_HEADINGS } from './cast-headings.ts';
import type { Order } from './cast-order.ts';

/** What each column holds, by its heading. */
export interface Columns {
  readonly delimiter: Delimiter;
  readonly width: number;
  readonly number: number;
  readonly part: readonly number[];
  readonly person: readonly number[];
  /** -1 where there is none. */
  readonly pickUp: number;
  readonly onSet: number;
}

/** A line that only names columns or a section, like 'CAST' or 'No. Character Artist'. */
export function isHeading(line: string): boolean {
  const words = headingWords(line);
  if (!words.some((word) => SURE_HEADINGS.has(word)) || /^\d/.test(words[0]!)) return false;
  const others = words.filter((word) => !HEADING_WORDS.has(word) && !/^\d+$/.test(word));
  // If parts and performers are both named, unknown words name more columns.
  return others.length === 0 || (others.length * 2 <= words.length && namesBoth(words));
}

const headingWords = (line: string): string[] =>
  wordsOf(plain(line.replace(/[\t;,|]/g, ' '))).filter((word) => /[\p{L}\p{N}#№]/u.test(word));

const namesBoth = (words: readonly string[]): boolean =>
  !words.includes('plays') && isNaming(words, 'part') && isNaming(words, 'person');

const isNaming = (words: readonly string[], role: Role): boolean =>
  words.some((word) => ROLE_OF.get(word) === role);

/** 'Character', 'Artist name': headings of name columns, not names. */
export const isColumnName = (text: string): boolean =>
  ['part', 'person'].includes(ROLE_OF.get(plain(text)) ?? '');

/** A line of nothing but ornament or empty cells. */
export const isRule = (line: string): boolean => /^[\s\-–—=_*~.•·+|#,;]+$/.test(line);

/** The columns that a heading names, if it names parts or performers. */
export function columnsOf(line: string): Columns | null {
  for (const delimiter of DELIMITERS) {
    const cells = cellsAt(line, delimiter);
    if (cells.length < 2) continue;
    const roles = rolesOf(cells);
    const known = roles.filter((role, at) => role || isHeadingCell(cells[at]!)).length;
    const names = roles.some((role) => role === 'part' || role === 'person' || role === 'last');
    const rows = cells.some((cell) => ['number', 'aside'].includes(cellKind(cell)) && !isHeadingCell(cell));
    if (names && !rows && known >= 2) return { delimiter, width: cells.length, ...placesOf(roles) };
  }
  return null;
}

/** 'ON SET' and 'PU' can be in a row or head a column. */
const isHeadingCell = (cell: string): boolean => {
  const words = wordsOf(plain(cell));
  return words.length > 0 && words.every((word) => HEADING_WORDS.has(word));
};

function rolesOf(cells: readonly string[]): (Role | undefined)[] {
  const roles = cells.map((cell) => ROLE_OF.get(plain(cell)));
  const has = (role: Role) => roles.includes(role);
  // 'Cast' heads numbers beside performers and performers beside numbers; 'name' is whichever of the two is
  // missing.
  return roles.map((role) => {
    if (role === 'cast') return has('person') || has('last') ? 'number' : 'person';
    if (role === 'name') return has('person') || has('cast') ? 'part' : 'person';
    return role;
  });
}

function placesOf(roles: readonly (Role | undefined)[]): Omit<Columns, 'delimiter' | 'width'> {
  const at = (role: Role) => roles.flatMap((found, index) => (found === role ? [index] : []));
  const person = [...at('person'), ...at('first'), ...at('last')];
  return {
    number: roles.indexOf('number'),
    part: at('part').slice(0, 1),
    person,
    pickUp: roles.indexOf('pickUp'),
    onSet: roles.indexOf('onSet'),
  };
}

/** Whether the heading puts parts before performers or after; null if it does not say. */
export function orderNamed(line: string): Order | null {
  const words = wordsOf(plain(line).replace(/\bcast (?:no|nr|number|id|#)/, 'number'));
  const roles = words.map((word) => ROLE_OF.get(word));
  const part = roles.indexOf('part');
  const person = roles.findLastIndex((role) => role === 'person' || role === 'cast' || role === 'name');
  if (part < 0 || person < 0) return null;
  return part < person ? 'part-first' : 'person-first';
}
