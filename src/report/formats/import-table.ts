import type { Settings } from '../../day/settings/settings.ts';
import { RATES, type RateId } from '../../time/rate.ts';
import { withoutIsolates } from '../isolated.ts';
import type { ReportModel } from '../model.ts';
import type { OnRecorder } from '../on-recorders.ts';
import { noteText, STATE_WORDS, STATUS_WORDS } from '../printed/words.ts';
import { framesAt } from '../take-end.ts';
import type { TakeLine } from '../take-lines.ts';
import type { TrackLine } from '../track-lines.ts';
import { csvText } from './csv.ts';

/** A take on one of its recorders; null on a day with one. */
interface Line {
  readonly take: TakeLine;
  readonly on: OnRecorder | null;
}

/** The columns that every table begins with, whatever the day; after them one for each track, and for its state. */
const COLUMNS: Readonly<Record<string, (line: Line, model: ReportModel) => string>> = {
  Production: (_, { head }) => head.production,
  Date: ({ take }, { head }) => take.date || head.date,
  Roll: ({ take, on }) => (on ? on.roll : take.roll),
  Recorder: ({ on }, { head }) => on?.name ?? head.recorder,
  Scene: ({ take }) => take.scene,
  Slate: ({ take }) => take.slate || numbered(take).series,
  Take: ({ take }) => (take.slate ? take.take : numbered(take).number),
  File: ({ take, on }) => (on?.files ?? take.files).map(({ name }) => name).join('; '),
  Start: (line) => (isTimed(line) ? line.take.start : ''),
  End: (line) => (isTimed(line) ? line.take.end : ''),
  'Length in frames': (line) => lengthIn(line),
  'Frame rate': (line) => String(rateOf(line)),
  'Sample rate': (line) => String(setOf(line).sampleRate),
  Bits: (line) => String(setOf(line).bitDepth),
  Circled: ({ take }) => (take.circled ? 'yes' : ''),
  Status: ({ take }) => take.status.map((one) => STATUS_WORDS[one]).join(', '),
  Note: ({ take }) => take.notes.map((note) => noteText(note).replaceAll(/\s+/g, ' ')).join('; '),
};

/**
 * The takes as one table that an editing system or a spreadsheet imports as it is: a header line, the same columns
 * every day, numbers as numbers, track names alone in their columns, no line breaks within, and no guards.
 */
export function importTable(model: ReportModel): string {
  const numbers = [...new Set(model.layout.map(({ number }) => number))];
  const titles = [
    ...Object.keys(COLUMNS),
    ...numbers.map((number) => `Track ${number}`),
    ...numbers.map((number) => `Track ${number} state`),
  ];
  const records = linesOf(model).map((line) => {
    const byNumber = new Map(tracksOf(line).map((track) => [track.number, track]));
    const on = numbers.map((number) => byNumber.get(number));
    return [
      ...Object.values(COLUMNS).map((cell) => cell(line, model)),
      ...on.map((track) => track?.name ?? ''),
      ...on.map((track) => (track ? stateOf(track) : '')),
    ].map(withoutIsolates);
  });
  return csvText([titles, ...records]);
}

const linesOf = ({ takes }: ReportModel): Line[] =>
  takes.flatMap((take): Line[] =>
    take.recorders.length > 0 ? take.recorders.map((on) => ({ take, on })) : [{ take, on: null }],
  );

const setOf = ({ take, on }: Line): Settings => on?.set ?? take.set;
const tracksOf = ({ take, on }: Line): readonly TrackLine[] => on?.tracks ?? take.tracks;

/** Nobody noted what a recorder at another rate showed. */
const isTimed = ({ on }: Line): boolean => on?.isAtRate !== false;

/** What its frames are counted at: as its start is, so that start and length make the end. */
function rateOf(line: Line): Settings['timecodeRate'] | RateId {
  const { start, length } = line.take.exact;
  const own = setOf(line).timecodeRate;
  return (isTimed(line) ? (start?.rate ?? length?.rate) : undefined) ?? own;
}

function lengthIn(line: Line): string {
  const { length } = line.take.exact;
  const rate = rateOf(line);
  if (!length) return '';
  return String(isRate(rate) ? framesAt(length, rate) : length.frames);
}

const isRate = (rate: string): rate is RateId => RATES.some(({ id }) => id === rate);

/** Wild tracks and room tones are counted by themselves: `'WT2'` is number 2 of the slate WT. */
function numbered({ take }: TakeLine): { readonly series: string; readonly number: string } {
  const [, series = '', number = take] = /^(\D+)(\d+)$/.exec(take) ?? [];
  return { series, number };
}

/** `'ganged'`, `'typed by hand, muted'`; empty for one voice and for a mix. */
const stateOf = ({ state, typed }: TrackLine): string =>
  [typed ? 'typed by hand' : '', state === 'mix' ? '' : STATE_WORDS[state]].filter(Boolean).join(', ');
