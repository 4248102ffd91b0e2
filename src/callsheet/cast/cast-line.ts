import { fail, ok, type Result } from '../../shared/result.ts';
import { cellKind, cellsAt, numberIn, withoutTimes } from '../cells/sheet-cells.ts';
import { hasLetter, isLower, isName, isUpper, wordsOf } from '../cells/sheet-names.ts';
import { isColumnName, isHeading } from './cast-columns.ts';
import { type Order, orderOf, splitByCase, type Told } from './cast-order.ts';

/** What one line names, before it is known which of two names is the part. */
export interface Names extends Told {
  readonly number: string;
  readonly first: string;
  /** Empty if the line has one name. */
  readonly second: string;
  /** The line splits into these names without guessing. */
  readonly clear: boolean;
  /** It is a row under columns that a heading names. */
  readonly isRow?: boolean;
}

type Reading = Result<Names>;

const LEADING_NUMBER =
  /^(?:#|№|(?:[Nn]o|NO|[Nn]r|[Cc]ast|CAST)\.?\s*#?)?\s*(?:[([](\d{1,4}[A-Za-z]?)[)\]]|(\d{1,4}(?:\.\d)?[A-Za-z]?(?:[-–]\d{1,4})?)(?=[\s.):\]–—-]))\s*(?:[.):\]](?!\d)|[-–—](?=\s|\p{Lu}))?\s*(?=[^\s\d:.])/u;
const NUMBER_WITHIN = /(?:^|\s+)[([]\s*(?:#|no\.?\s*)?(\d{1,4}[a-z]?)\s*[)\]](?:\s*[-–—:,.])?(?:\s+|$)/i;
const PERSON_AS_PART = /^(.+?)\s+(?:as|plays|playing)\s+(.+)$/i;
const PART_BY_PERSON = /^(.+?)\s+(?:played by|portrayed by)\s+(.+)$/i;
const SEPARATOR =
  /\s+[-–—=~•·>]+\s+|\s*(?:\.{3,}|…+|_{2,}|-{2,}|–{2,}|→|->|=>)\s*|\s*:\s+|\s+\/\s+|(?<=\p{L})[–—](?=\p{L})/u;
const IN_BRACKETS = /^(?!=)([^()]+)\(([^()]+)\)$/;
const REMARK =
  /^(?:v\.?\s?o\.?|o\.?\s?[sc]\.?|voice|minor|child|stunts?|double|photo double|pick-?up|cameo|live|guest|[kcm])$/i;

/** Parses a line without named columns. Fails with `no-name` or `not-understood`. */
export function readCastLine(line: string): Reading {
  const read = readCells(cellsIn(line), '');
  const names = read.ok ? [read.value.first, read.value.second] : [];
  return names.some(isColumnName) ? notUnderstood : read;
}

/** Cells by their delimiter; a comma counts only after a number or between three or more cells. */
function cellsIn(line: string): string[] {
  for (const delimiter of ['\t', ';', '|', 'spaces'] as const) {
    const cells = cellsAt(line, delimiter);
    if (cells.filter(Boolean).length > 1) return cells;
  }
  const cells = cellsAt(line, ',').filter(Boolean);
  const [first = ''] = cells;
  return cells.length > 2 || (cells.length === 2 && cellKind(first) === 'number') ? cells : [line.trim()];
}

function readCells(cells: readonly string[], knownNumber: string): Reading {
  const texts: string[] = [];
  let number = knownNumber;
  let leftOut = false;
  for (const cell of cells) {
    const kind = cellKind(cell);
    if (kind === 'number') number ||= numberIn(cell);
    leftOut ||= kind === 'aside';
    if (kind !== 'text') continue;
    const found = number ? { number: '', rest: cell } : withLeadingNumber(cell);
    number ||= found.number;
    const rest = withoutTimes(found.rest);
    leftOut ||= rest !== found.rest;
    // What is left of 'P/U 0600' is a column name.
    const isLabel = rest !== found.rest && isHeading(rest);
    if (hasLetter(rest) && !isLabel) texts.push(rest);
  }
  const [first, second] = texts;
  if (first === undefined) return fail({ code: 'no-name' });
  // A word beside a time without a number may be a performer, but also lunch.
  if (second === undefined) return unclearIf(leftOut && !number, readText(first, number));
  return pair(first, second, number, texts.length === 2);
}

function withLeadingNumber(text: string): { number: string; rest: string } {
  const found = LEADING_NUMBER.exec(text);
  const number = found?.[1] ?? found?.[2] ?? '';
  // '10 x Villagers' counts them.
  const counts = found && /^[x×]\s/.test(text.slice(found[0].length));
  if (!found || counts || cellKind(number) !== 'number') return { number: '', rest: text };
  return { number, rest: text.slice(found[0].length).replace(/^[-–—:.,\s]+/, '') };
}

function readText(text: string, number: string): Reading {
  const within = number ? null : NUMBER_WITHIN.exec(text);
  if (within) {
    const around = [text.slice(0, within.index), text.slice(within.index + within[0].length)];
    return readCells(
      around.map((part) => part.replace(/^[-–—:,.\s]+/, '').trim()),
      within[1]!,
    );
  }
  const as = PART_BY_PERSON.exec(text) ?? PERSON_AS_PART.exec(text);
  if (as) return ordered(as[1]!, as[2]!, PART_BY_PERSON.test(text) ? 'part-first' : 'person-first', number);
  const separated = piecesOf(text, SEPARATOR);
  // After a colon and without a number it may be a performer, but also the weather.
  if (separated.length > 1) return unclearIf(!number && text.includes(':'), readCells(separated, number));
  const bracketed = IN_BRACKETS.exec(text);
  if (bracketed && !REMARK.test(bracketed[2]!.trim()))
    return readBrackets(bracketed[1]!, bracketed[2]!, number);
  const commas = piecesOf(text, /,/);
  return commas.length > 1 ? readCells(commas, number) : readRun(text, number);
}

const piecesOf = (text: string, separator: RegExp): string[] =>
  text
    .split(separator)
    .map((piece) => piece.trim())
    .filter(Boolean);

const unclearIf = (unclear: boolean, read: Reading): Reading =>
  read.ok && unclear ? ok({ ...read.value, clear: false }) : read;

/** 'Anna Berg (Ines)' and, if capitals or word counts show it, 'INES (Anna Berg)'. */
function readBrackets(outer: string, inner: string, number: string): Reading {
  const read = pair(outer.trim(), inner.trim(), number, true);
  if (!read.ok || read.value.sign === 'looks') return read;
  const { order } = read.value;
  return ok({
    ...read.value,
    order: order ?? 'person-first',
    sign: order === 'person-first' ? 'looks' : 'likely',
  });
}

/** Words with nothing between them: capitals may tell part from performer, else the number of words. */
function readRun(text: string, number: string): Reading {
  const words = wordsOf(text);
  const byCase = splitByCase(words);
  if (byCase) return pair(byCase[0], byCase[1], number, true);
  if (number && words.length > 2 && words.length < 7 && !/^(?:the|a|an)$/i.test(words[0]!)) {
    const read = pair(words.slice(0, -2).join(' '), words.slice(-2).join(' '), number, false);
    return read.ok ? ok({ ...read.value, order: 'part-first', sign: 'likely' }) : read;
  }
  return alone(text, number, words.length);
}

function alone(text: string, number: string, words: number): Reading {
  const capitalised = /^["'“‘(\d]*(?:\p{Lu}|\p{Lo})/u.test(text);
  if (!isName(text) || (!number && (words > 3 || (!capitalised && words > 1)))) return notUnderstood;
  const clear = words === 1 || (isUpper(text) && words === 2);
  return ok({ number, first: text, second: '', order: 'part-first', sign: 'likely', clear });
}

const notUnderstood = fail({ code: 'not-understood' });

function ordered(first: string, second: string, order: Order, number: string): Reading {
  const read = pair(first.trim(), second.trim(), number, true);
  return read.ok ? ok({ ...read.value, order, sign: 'worded' }) : read;
}

function pair(first: string, second: string, number: string, clear: boolean): Reading {
  if (!isName(first) || !isName(second)) return notUnderstood;
  // 'Weather: mostly dry' looks like a pair; only a number shows that lower-case words are names.
  const mixed = isLower(first) !== isLower(second) || wordsOf(`${first} ${second}`).length > 6;
  if (!number && mixed && (isLower(first) || isLower(second))) return notUnderstood;
  return ok({ number, first, second, clear, ...orderOf(first, second) });
}
