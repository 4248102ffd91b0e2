import { FIRST_FORM, SECOND_FORM } from '../form.ts';
import type { ReportModel } from '../model.ts';
import { type Extras, type Revision, revisionLines } from '../revision/revision.ts';
import {
  type CsvColumn,
  type CsvGuard,
  type CsvLines,
  type CsvRow,
  DEFAULT_CSV_COLUMNS,
  type PrintedColumn,
  printedColumns,
  tracksOf,
} from './csv-columns.ts';
import { guardFormula } from './csv-field.ts';
import { withChanges } from './csv-first-form.ts';

export interface CsvOptions extends Pick<Extras, 'revision'> {
  /** One line per take, or one per track of a take. */
  readonly lines?: CsvLines;
  /** In the mixer's order; `DEFAULT_CSV_COLUMNS` by default. */
  readonly columns?: readonly CsvColumn[];
  /** Some spreadsheets recognise UTF-8 only by a byte-order mark. */
  readonly byteOrderMark?: boolean;
  /** `'formulas'` by default. */
  readonly guard?: CsvGuard;
}

const BYTE_ORDER_MARK = '\ufeff';

/**
 * The takes as CSV (RFC 4180): a header line, CR LF after every record, every field in quotes, and a single
 * quote before what a spreadsheet would run; `unguard` in `csv-field.ts` removes it. A revision has the same
 * table: what changed is in `changesCsv`.
 */
export function reportCsv(model: ReportModel, options: CsvOptions = {}): string {
  const { lines = 'take', columns = DEFAULT_CSV_COLUMNS[lines], byteOrderMark = false } = options;
  const { guard = 'formulas', revision } = options;
  const printed = printedColumns(model, lines, columns, guard);
  if (printed.length === 0) return byteOrderMark ? BYTE_ORDER_MARK : '';
  const records = [printed.map(({ title }) => title), ...cellsOf(rowsOf(model, lines), printed)];
  const all = revision && model.form === FIRST_FORM ? withChanges(records, revision) : records;
  return (byteOrderMark ? BYTE_ORDER_MARK : '') + csvText(all);
}

/** What a revision changed, as a table of its own: a line a change. */
export function changesCsv(revision: Revision, byteOrderMark = false): string {
  const { letter, since } = revision;
  const changes = revisionLines(revision).map((line) => [letter, since, guardFormula(line)]);
  return (byteOrderMark ? BYTE_ORDER_MARK : '') + csvText([['Revision', 'Since', 'Change'], ...changes]);
}

/** Records of fields as RFC 4180 text, without guards. `csvText([['a,b', '']])` is `"a,b",""` CR LF. */
export const csvText = (records: readonly (readonly string[])[]): string => records.map(csvRecord).join('');

/** Every field in quotes, a quote inside it doubled (RFC 4180 section 2, rule 7). */
const csvRecord = (fields: readonly string[]): string => {
  const doubled = fields.some((field) => field.includes('"'))
    ? fields.map((field) => field.replaceAll('"', '""'))
    : fields;
  return `"${doubled.join('","')}"\r\n`;
};

/**
 * The cells of every line; those that are the same for all tracks of a take, or for all takes of a track, are
 * computed once.
 */
function cellsOf(rows: readonly CsvRow[], columns: readonly PrintedColumn[]): string[][] {
  const ofTracks = new Map<CsvRow['track'], string[]>();
  let before: CsvRow | undefined;
  let ofTake: string[] = [];
  return rows.map((row) => {
    if (row.take !== before?.take || row.on !== before.on) ofTake = [];
    before = row;
    const ofTrack = ofTracks.get(row.track) ?? [];
    ofTracks.set(row.track, ofTrack);
    return columns.map(({ cell, sameFor }, at) => {
      const known = sameFor === 'take' ? ofTake : sameFor === 'track' ? ofTrack : null;
      if (!known) return cell(row);
      known[at] ??= cell(row);
      return known[at];
    });
  });
}

/** A line a take, or a track; on a day with several recorders of each that has the take. */
function rowsOf({ form, takes }: ReportModel, lines: CsvLines): CsvRow[] {
  return takes
    .flatMap((take): CsvRow[] => {
      const isEach = form > SECOND_FORM && take.recorders.length > 0;
      return (isEach ? take.recorders : [null]).map((on) => ({ take, on, track: null }));
    })
    .flatMap((row): CsvRow[] => {
      const tracks = lines === 'take' ? [] : tracksOf(row);
      return tracks.length === 0 ? [row] : tracks.map((track) => ({ ...row, track }));
    });
}
