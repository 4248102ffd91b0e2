import { FIRST_FORM } from '../form.ts';
import { withoutIsolates } from '../isolated.ts';
import type { ReportModel } from '../model.ts';
import {
  noteText,
  onRecorderWords,
  STATE_WORDS,
  STATUS_WORDS,
  trackText,
  trackUnit,
} from '../printed/words.ts';
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
    cell: ({ take }, { head }) =>
      head.recorders.length > 0 ? take.recorders.map(onRecorderWords).join('; ') : head.recorder,
  },
  'sample-rate': { title: 'Sample rate', cell: ({ take }) => sampleRateWords(take.set.sampleRate) },
  'bit-depth': { title: 'Bit depth', cell: ({ take }) => bitDepthWords(take.set.bitDepth) },
  'timecode-rate': { title: 'Timecode rate', cell: ({ take }) => rateWords(take.set.timecodeRate) },
  'file-layout': { title: 'File layout', cell: ({ take }) => layoutWords(take.set.fileLayout) },
  file: { title: 'File', ofLine: true, cell: (row) => fileCell(row) },
  roll: { title: 'Roll', cell: ({ take }) => take.rollWord },
  scene: { title: 'Scene', cell: ({ take }) => take.scene },
  slate: { title: 'Slate', cell: ({ take }) => take.slate },
  take: { title: 'Take', cell: ({ take }) => take.take },
  called: { title: 'Called', cell: ({ take }) => take.text },
  start: { title: 'Start', cell: ({ take }) => take.start },
  length: { title: 'Length', cell: ({ take }) => clockLength(take) },
  circled: { title: 'Circled', cell: ({ take }) => (take.circled ? 'circled' : '') },
  status: { title: 'Status', cell: ({ take }) => take.status.map((one) => STATUS_WORDS[one]).join(', ') },
  tracks: {
    title: 'Tracks',
    only: 'take',
    several: true,
    cell: ({ take }) => take.tracks.map(trackUnit).join('; '),
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
const columnsOfChanges = ({ head: { set, recorders } }: ReportModel): CsvColumn[] => [
  ...(recorders.length > 0 ? ['recorder' as const] : []),
  ...(set.timecodeRate.length > 1 ? ['timecode-rate' as const] : []),
  ...(set.sampleRate.length > 1 ? ['sample-rate' as const] : []),
  ...(set.bitDepth.length > 1 ? ['bit-depth' as const] : []),
];

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
  const known = [...new Set([...ids, ...columnsOfChanges(model)])].filter(
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

const eachTrack = ({ layout }: ReportModel): PrintedColumn[] =>
  layout
    .filter(({ spans }) => spans.some(({ line }) => line !== null))
    .map(({ track: id, number }) => ({
      title: `Track ${number}`,
      sameFor: 'take',
      cell: ({ take }) => {
        const line = take.tracks.find(({ track }) => track === id);
        return line ? trackText(line) : '';
      },
    }));

/** The file of the track, or all files of the take. */
function fileCell({ take, track }: CsvRow): string {
  const own = take.files.filter((file) => track !== null && file.track === track.track);
  return (own.length > 0 ? own : take.files).map((file) => file.name).join('; ');
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

/** Notes on the take, and on tracks without a line of their own. */
function otherNotes({ take, track }: CsvRow): string {
  const hasLine = (note: NoteLine) =>
    track !== null && note.track !== null && take.tracks.some((line) => line.track === note.track);
  return notesJoined(take.notes.filter((note) => !hasLine(note)).map(noteText));
}

const notesJoined = (notes: readonly string[]): string => notes.join('\n');
