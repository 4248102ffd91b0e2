import { cleanNote } from '../clean-text.ts';
import { SECOND_FORM } from '../form.ts';
import { isolated } from '../isolated.ts';
import { issueTitle } from '../list/issue-words.ts';
import { type ListedTake, nobodyOn, takeList } from '../list/take-list.ts';
import type { ReportModel } from '../model.ts';
import { handOverText } from '../printed/hand-over-words.ts';
import { tracksTitle } from '../printed/layout-words.ts';
import { matterText } from '../printed/matter-words.ts';
import { padTo, textWidth, wrapText, wrapUnits } from '../printed/text-width.ts';
import { headLines, totalsLines } from '../printed/words.ts';
import { type Extras, revisionLines, revisionTitle } from '../revision/revision.ts';
import {
  block,
  cautionBlock,
  hung,
  labelled,
  layoutLines,
  listed,
  TEXT_COLUMNS,
  type TextBlock,
} from './text-lines.ts';
import { secondFormBlocks } from './text-second-form.ts';

/** The report as blocks of lines of at most `TEXT_COLUMNS` columns, in reading order. */
export const textBlocks = (model: ReportModel, extras: Extras = {}): TextBlock[] =>
  model.form > SECOND_FORM ? listBlocks(model, extras) : secondFormBlocks(model, extras);

/** The head, and then the takes: they are what a report is opened for. */
function listBlocks(model: ReportModel, extras: Extras): TextBlock[] {
  const { open, takes, lists } = model;
  const { revision, signature = '' } = extras;
  const signed = cleanNote(signature);
  const changes = revision ? revisionLines(revision).flatMap(listed) : [];
  return [
    block('head', [
      ...wrapText(issueTitle(extras).toUpperCase(), TEXT_COLUMNS),
      '',
      ...cautionBlock(model),
      ...labelled(headLines(model.head)),
    ]),
    ...(revision ? [block('changes', ['', revisionTitle(revision).toUpperCase(), ...changes])] : []),
    ...takeBlocks(model, extras),
    ...(takes.length === 0 ? lists : [])
      .filter(({ layout }) => layout.length > 0)
      .map((list) => block('layout', ['', tracksTitle(list).toUpperCase(), ...layoutLines(list)])),
    ...(open.length > 0
      ? [block('open', ['', 'NOT SETTLED', ...open.flatMap((matter) => listed(matterText(matter)))])]
      : []),
    block('totals', [
      ...(takes.length > 0 ? [] : ['', 'No takes.']),
      '',
      'TOTALS',
      ...labelled([...totalsLines(model), ...(takes.length > 0 ? nobodyOn(lists) : [])]),
      ...handOverBlock(model),
    ]),
    ...(signed ? [block('signature', ['', ...wrapText(signed, TEXT_COLUMNS)])] : []),
  ];
}

/** What went to whom, under the totals. */
const handOverBlock = ({ handOvers }: ReportModel): string[] =>
  handOvers.length > 0 ? ['', 'HANDED OVER', ...handOvers.map(handOverText).flatMap(listed)] : [];

const WIDEST_NAME = 14;
/** Start, end and length with the spaces before them. */
const TIMES = 39;

interface Columns {
  readonly name: number;
  readonly file: number;
  readonly start: number;
  readonly end: number;
  readonly length: number;
}

const HEADS = { name: 'Take', file: 'File', start: 'Start', end: 'End', length: 'Length' } as const;

function takeBlocks(model: ReportModel, extras: Extras): TextBlock[] {
  const list = takeList(model, extras);
  const widest = (column: keyof typeof HEADS, of: (take: ListedTake) => string): number =>
    Math.max(HEADS[column].length, ...list.map((take) => textWidth(of(take))));
  const name = Math.min(WIDEST_NAME, widest('name', ({ text }) => text) + 2) + 1;
  const columns: Columns = {
    name,
    // A longer one stands alone on its line.
    file: Math.min(
      TEXT_COLUMNS - name - TIMES,
      widest('file', ({ file }) => file),
    ),
    start: widest('start', ({ start }) => start),
    end: widest('end', ({ end }) => end),
    length: widest('length', ({ length }) => length),
  };
  return list.map((take, at) => {
    const title =
      at === 0 ? ['', 'TAKES', ...hung(padTo(' Take', columns.name), cellsOf(HEADS, columns))] : [];
    const rollLine = take.rollHeading ? ['', take.rollHeading] : [];
    return { part: 'takes', take: take.takeId, lines: [...title, ...rollLine, ...takeText(take, columns)] };
  });
}

/** The file, its times, and what else is said, on one line if there is room. */
function cellsOf(
  { file, start, end, length }: typeof HEADS | ListedTake,
  columns: Columns,
  words = '',
): string[] {
  const times = [padTo(start, columns.start), padTo(end, columns.end), padTo(length, columns.length)];
  const units = [padTo(isolated(file), columns.file), times.join('  ').trimEnd(), words];
  return wrapUnits(units.filter(Boolean), '  ', TEXT_COLUMNS - columns.name).map((line) => line.trimEnd());
}

/** A circled take is in brackets, as close to a circle as a mail comes, and says so in a word too. */
function takeText(take: ListedTake, columns: Columns): string[] {
  const text = isolated(take.text);
  const name = padTo(take.circled ? `(${text})` : ` ${text} `, columns.name);
  const width = TEXT_COLUMNS - columns.name;
  const lines = [
    ...cellsOf(take, columns, take.words.join(', ')),
    ...(take.names ? wrapText(isolated(take.names), width) : []),
    ...take.also.flatMap((text) => wrapText(text, width)),
    ...take.lists.flatMap((units) =>
      wrapUnits(
        units.map(({ text }) => text),
        ' · ',
        width,
      ),
    ),
    ...take.notes.flatMap((note) => hung('- ', wrapText(note, width - 2))),
  ];
  if (textWidth(name) <= columns.name) return hung(name, lines);
  // A long slate gets its own lines.
  return [...wrapText(name.trim(), TEXT_COLUMNS), ...hung(' '.repeat(columns.name), lines)];
}

/** The whole report as plain text of at most 72 columns, lines ending in LF, for a mail body or a file. */
export const reportText = (model: ReportModel, extras: Extras = {}): string =>
  `${textBlocks(model, extras)
    .flatMap(({ lines }) => lines)
    .join('\n')}\n`;
