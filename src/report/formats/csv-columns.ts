import type { Settings } from '../../day/settings/settings.ts';
import { FIRST_FORM, SECOND_FORM } from '../form.ts';
import { withoutIsolates } from '../isolated.ts';
import type { ReportModel } from '../model.ts';
import type { OnRecorder } from '../on-recorders.ts';
import { onRecorderWords } from '../printed/recorder-words.ts';
import { noteText, STATE_WORDS, STATUS_WORDS, trackText, trackUnit } from '../printed/words.ts';
import { NO_ROLL } from '../rolls.ts';
import { bitDepthWords, layoutWords, rateWords, sampleRateWords } from '../setting-words.ts';
import type { NoteLine, TakeLine } from '../take-lines.ts';
import type { TrackLine } from '../track-lines.ts';
import { guardFormula } from './csv-field.ts';
import { firstFormCell } from './csv-first-form.ts';

/** What one line of the table covers: a whole take, or one track of it. */
export type CsvLines = 'take' | 'track';

/** One line of the table. A take without tracks has one line without a track. */
export interface CsvRow {
  readonly take: TakeLine;
  /** The recorder it is about; null on a day with one, for MOS, and in the first two forms. */
  readonly on: OnRecorder | null;
  readonly track: TrackLine | null;
}

interface Column {
  readonly title: string;
  /** Missing if it fits both kinds of table. */
  readonly only?: CsvLines;
  readonly cell: (row: CsvRow, model: ReportModel) => string;
  /** About this track in this take alone. */
  readonly ofLine?: true;
  /** Several numbers and names in one cell: isolates keep a right-to-left name from swapping numbers. */
  readonly several?: true;
}

/** Every column except `each-track`, by the stored name that the mixer also sees. */
const COLUMNS = {
  production: { title: 'Production', cell: (_, { head }) => head.production },
  day: { title: 'Day', cell: (_, { head }) => head.label },
  date: { title: 'Date', cell: ({ take }, { head }) => take.date || head.date },
  unit: { title: 'Unit', cell: (_, { head }) => head.unit },
  mixer: { title: 'Mixer', cell: (_, { head }) => head.mixer },
  recorder: {
    title: 'Recorder',
    cell: ({ take, on }, { head }) => {
      if (on) return on.name;
      return head.recorders.length > 0 ? take.recorders.map(onRecorderWords).join('; ') : head.recorder;
    },
  },
  'sample-rate': { title: 'Sample rate', cell: (row) => sampleRateWords(setOf(row).sampleRate) },
  'bit-depth': { title: 'Bit depth', cell: (row) => bitDepthWords(setOf(row).bitDepth) },
  'timecode-rate': { title: 'Timecode rate', cell: (row) => rateWords(setOf(row).timecodeRate) },
  'file-layout': { title: 'File layout', cell: (row) => layoutWords(setOf(row).fileLayout) },
  file: { title: 'File', ofLine: true, cell: (row) => fileCell(row) },
  roll: {
    title: 'Roll',
    cell: ({ take, on }, { head }) =>
      on ? on.roll || (head.rolls.length > 0 ? NO_ROLL : '') : take.rollWord,
  },
  scene: { title: 'Scene', cell: ({ take }) => take.scene },
  slate: { title: 'Slate', cell: ({ take }) => take.slate },
  take: { title: 'Take', cell: ({ take }) => take.take },
  called: { title: 'Called', cell: ({ take }) => take.text },
  start: { title: 'Start', cell: ({ take, on }) => (on?.isAtRate === false ? '' : take.start) },
  length: { title: 'Length', cell: ({ take }) => clockLength(take) },
  circled: { title: 'Circled', cell: ({ take }) => (take.circled ? 'circled' : '') },
  status: { title: 'Status', cell: ({ take }) => take.status.map((one) => STATUS_WORDS[one]).join(', ') },
  tracks: {
    title: 'Tracks',
    only: 'take',
    several: true,
    cell: (row) => tracksOf(row).map(trackUnit).join('; '),
  },
  track: { title: 'Track', only: 'track', cell: ({ track }) => track?.number ?? '' },
  name: { title: 'Name', only: 'track', cell: ({ track }) => track?.name ?? '' },
  state: { title: 'State', only: 'track', cell: ({ track }) => (track ? stateCell(track) : '') },
  voices: { title: 'Voices', only: 'track', cell: ({ track }) => (track ? voicesCell(track) : '') },
  'track-notes': { title: 'Track notes', only: 'track', ofLine: true, cell: (row) => trackNotes(row) },
  notes: { title: 'Notes', cell: (row) => otherNotes(row) },
} satisfies Record<string, Column>;

/** `each-track` expands to one column for each track that was used. */
export type CsvColumn = keyof typeof COLUMNS | 'each-track';

const ONLY_TAKES: readonly CsvColumn[] = ['each-track'];

/** The columns a table of this kind can have, in the usual order. */
export const csvColumnsFor = (lines: CsvLines): CsvColumn[] =>
  [...(Object.keys(COLUMNS) as CsvColumn[]), ...ONLY_TAKES].filter((id) => fits(id, lines));

const fits = (id: CsvColumn, lines: CsvLines): boolean =>
  id === 'each-track' ? lines === 'take' : ((COLUMNS[id] as Column).only ?? lines) === lines;

/** What the mixer sees when ordering the columns. */
export const csvColumnTitle = (id: CsvColumn): string =>
  id === 'each-track' ? 'Each track' : COLUMNS[id].title;

export const DEFAULT_CSV_COLUMNS: Record<CsvLines, readonly CsvColumn[]> = {
  take: [
    'file',
    'roll',
    'scene',
    'slate',
    'take',
    'start',
    'length',
    'circled',
    'status',
    'each-track',
    'notes',
  ],
  track: [
    'file',
    'roll',
    'scene',
    'slate',
    'take',
    'start',
    'length',
    'circled',
    'status',
    'track',
    'name',
    'state',
    'voices',
    'track-notes',
    'notes',
  ],
};

/** What changes during the day, and who rolled of several, is in every table, after the columns that were chosen. */
const columnsOfChanges = ({ form, head: { set, recorders, apart } }: ReportModel): CsvColumn[] => [
  ...(recorders.length > 0 ? ['recorder' as const] : []),
  ...(recorders.length > 0 && form > SECOND_FORM ? ['roll' as const] : []),
  ...(set.timecodeRate.length > 1 || apart.includes('timecodeRate') ? ['timecode-rate' as const] : []),
  ...(set.sampleRate.length > 1 || apart.includes('sampleRate') ? ['sample-rate' as const] : []),
  ...(set.bitDepth.length > 1 || apart.includes('bitDepth') ? ['bit-depth' as const] : []),
];

/** The recorder goes with its roll: of a table with a line for each, both are what tells the lines apart. */
const withRecorder = (ids: readonly CsvColumn[], { form, head }: ReportModel): readonly CsvColumn[] =>
  form > SECOND_FORM && head.recorders.length > 0 && !ids.includes('recorder')
    ? ids.flatMap((id) => (id === 'roll' ? ['recorder', id] : [id]))
    : ids;

/** Whether a cell that a spreadsheet would run is guarded; an importing program wants it as it is. */
export type CsvGuard = 'formulas' | 'none';

/** One printed column: its title, and its finished cell in a row. */
export interface PrintedColumn {
  readonly title: string;
  readonly cell: (row: CsvRow) => string;
  /** Whether the cell is the same in every line of one take, or of one track line, which takes may share. */
  readonly sameFor: 'take' | 'track' | null;
}

/**
 * The columns as printed, each once; unknown ones (from another version) and those that do not fit the table
 * are left out.
 */
export function printedColumns(
  model: ReportModel,
  lines: CsvLines,
  ids: readonly CsvColumn[],
  guard: CsvGuard,
): PrintedColumn[] {
  const finished = (id: CsvColumn, value: string, several?: true): string => {
    const isFirst = model.form === FIRST_FORM;
    const text = several && !isFirst ? value : withoutIsolates(value);
    if (guard === 'none') return text;
    return isFirst ? firstFormCell(id, text) : guardFormula(text);
  };
  const known = [...new Set([...withRecorder(ids, model), ...columnsOfChanges(model)])].filter(
    (id) => (id in COLUMNS || id === 'each-track') && fits(id, lines),
  );
  return known.flatMap((id) => {
    if (id === 'each-track')
      return eachTrack(model).map((one) => ({ ...one, cell: (row) => finished(id, one.cell(row)) }));
    const column: Column = COLUMNS[id];
    const { title, cell, ofLine, several, only = 'take' } = column;
    const finishedCell = (row: CsvRow) => finished(id, cell(row, model), several);
    return [{ title, cell: finishedCell, sameFor: ofLine ? null : only }];
  });
}

/** A column for each number of a track: two recorders may have a track 5 each, on lines of their own. */
const eachTrack = ({ layout }: ReportModel): PrintedColumn[] => {
  const used = layout.filter(({ spans }) => spans.some(({ line }) => line !== null));
  return [...new Set(used.map(({ number }) => number))].map((number) => ({
    title: `Track ${number}`,
    sameFor: 'take',
    cell: (row) => {
      const line = tracksOf(row).find((one) => one.number === number);
      return line ? trackText(line) : '';
    },
  }));
};

const setOf = ({ take, on }: CsvRow): Settings => on?.set ?? take.set;

/** The tracks of the recorder that the line is about. */
export const tracksOf = ({ take, on }: CsvRow): readonly TrackLine[] => on?.tracks ?? take.tracks;

/** The file of the track, or all files of the take. */
function fileCell({ take, on, track }: CsvRow): string {
  const files = on?.files ?? take.files;
  const own = files.filter((file) => track !== null && file.track === track.track);
  return (own.length > 0 ? own : files).map((file) => file.name).join('; ');
}

/** Hours, minutes and seconds: a spreadsheet would take `1:52` for hours and minutes. */
function clockLength({ lengthMs }: TakeLine): string {
  if (lengthMs === null) return '';
  const seconds = Math.round(lengthMs / 1000);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(seconds / 3600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}

const stateCell = ({ state, typed }: TrackLine): string =>
  [typed ? 'typed by hand' : '', STATE_WORDS[state] || 'alone'].filter(Boolean).join(', ');

const voicesCell = ({ voices }: TrackLine): string =>
  voices.map((voice) => (voice.muted ? `${voice.name} (muted)` : voice.name)).join(', ');

const trackNotes = ({ take, track }: CsvRow): string =>
  notesJoined(
    take.notes.filter((note) => track !== null && note.track === track.track).map(({ text }) => text),
  );

/** Notes on the take, and on tracks without a line of their own; not those on tracks of another recorder. */
function otherNotes(row: CsvRow): string {
  const { take, track } = row;
  const isOf = (tracks: readonly TrackLine[], note: NoteLine): boolean =>
    tracks.some((line) => line.track === note.track);
  const own = tracksOf(row);
  const hasLine = (note: NoteLine) => track !== null && note.track !== null && isOf(own, note);
  const isElsewhere = (note: NoteLine) =>
    row.on !== null && !isOf(own, note) && take.recorders.some(({ tracks }) => isOf(tracks, note));
  return notesJoined(take.notes.filter((note) => !hasLine(note) && !isElsewhere(note)).map(noteText));
}

const notesJoined = (notes: readonly string[]): string => notes.join('\n');
