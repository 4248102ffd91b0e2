import { withoutIsolates } from '../isolated.ts';
import { type Revision, revisionLines } from '../revision/revision.ts';

// The table as the first form had it, so that tables sent in that form come back byte for byte.

const FORMULA = /^\s*[=+\-@＝＋－＠\t\r\n\0]|^[\t\r\n\0']/;

/** What a spreadsheet would turn into another number, a date or a truth value. */
const CONVERTED: readonly RegExp[] = [
  /^0\d+$/,
  /^\d+(\.\d+)?e[+-]?\d+$/i,
  /^\d{16,}$/,
  /^\d{1,4}[-/.]\d{1,4}([-/.]\d{1,4})?$/,
  /^\d{1,4}[- /.]?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[- /.]?\d*$/i,
  /^(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[- /.]?\d+$/i,
  /^(true|false)$/i,
];

/** Nothing longer is read as a number or a date. */
const LONGEST = 40;

const isConverted = (value: string): boolean =>
  value.length <= LONGEST && CONVERTED.some((pattern) => pattern.test(value.trim()));

export const guardText = (value: string): string => (FORMULA.test(value) ? `'${value}` : value);

const NAMES: ReadonlySet<string> = new Set([
  'day',
  'file',
  'roll',
  'scene',
  'slate',
  'take',
  'called',
  'track',
  'name',
  'each-track',
]);

/** A cell of the first form: names were guarded against becoming numbers or dates too. */
export const firstFormCell = (id: string, value: string): string =>
  NAMES.has(id) && isConverted(value) ? `'${value}` : guardText(value);

/** Changes went in a first column of their own, one record each, before the takes. */
export function withChanges([header, ...records]: string[][], revision: Revision): string[][] {
  const empty = header!.map(() => '');
  return [
    [`Revision ${revision.letter}, changed since ${revision.since}`, ...header!],
    ...revisionLines(revision).map((line) => [guardText(withoutIsolates(line)), ...empty]),
    ...records.map((record) => ['', ...record]),
  ];
}
