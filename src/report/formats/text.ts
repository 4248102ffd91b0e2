import type { TakeId } from '../../day/model.ts';
import { cleanNote } from '../clean-text.ts';
import { isolated } from '../isolated.ts';
import type { ReportModel } from '../model.ts';
import { handOverText } from '../printed/hand-over-words.ts';
import { tracksTitle, unusedTracks, usedTracks } from '../printed/layout-words.ts';
import { matterText } from '../printed/matter-words.ts';
import { type PrintedTake, printedTake } from '../printed/printed-take.ts';
import { cautionLines } from '../printed/recorder-words.ts';
import { padTo, textWidth, wrapText, wrapUnits } from '../printed/text-width.ts';
import { headLines, totalsLines } from '../printed/words.ts';
import { type Extras, revisionLines, revisionTitle } from '../revision/revision.ts';
import type { TrackList } from '../track-lists.ts';

/** Fits a mail that is read, quoted and printed in a fixed-width font (RFC 5322 section 2.1.1). */
export const TEXT_COLUMNS = 72;

/** A part of the report that is printed whole or left out whole. */
export interface TextBlock {
  readonly part: 'head' | 'changes' | 'open' | 'layout' | 'takes' | 'totals' | 'signature';
  /** The take that a block of `takes` covers. */
  readonly take: TakeId | null;
  readonly lines: readonly string[];
}

const block = (part: TextBlock['part'], lines: readonly string[]): TextBlock => ({ part, take: null, lines });

/** The report as blocks of lines of at most `TEXT_COLUMNS` columns, in reading order. */
export function textBlocks(model: ReportModel, { revision, signature = '' }: Extras = {}): TextBlock[] {
  const { open, lists, takes } = model;
  const title = revision ? `SOUND REPORT, REVISION ${revision.letter}` : 'SOUND REPORT';
  const signed = cleanNote(signature);
  return [
    block('head', [title, '', ...cautionBlock(model), ...labelled(headLines(model.head))]),
    ...(revision
      ? [
          block('changes', [
            '',
            revisionTitle(revision).toUpperCase(),
            ...revisionLines(revision).flatMap(listed),
          ]),
        ]
      : []),
    ...(open.length > 0
      ? [block('open', ['', 'NOT SETTLED', ...open.flatMap((matter) => listed(matterText(matter)))])]
      : []),
    ...lists
      .filter(({ layout }) => layout.length > 0)
      .map((list) => block('layout', ['', tracksTitle(list).toUpperCase(), ...layoutLines(list)])),
    ...takeBlocks(model),
    block('totals', [
      ...(takes.length > 0 ? [] : ['', 'No takes.']),
      '',
      'TOTALS',
      ...labelled(totalsLines(model)),
      ...handOverBlock(model),
    ]),
    ...(signed ? [block('signature', ['', ...wrapText(signed, TEXT_COLUMNS)])] : []),
  ];
}

/** Lines indented under the lead before the first of them. */
const hung = (lead: string, lines: readonly string[]): string[] =>
  lines.map((line, at) => ((at === 0 ? lead : ' '.repeat(textWidth(lead))) + line).trimEnd());

function labelled(pairs: readonly (readonly [string, string])[]): string[] {
  const widest = Math.max(...pairs.map(([label]) => label.length)) + 2;
  return pairs.flatMap(([label, text]) =>
    hung(padTo(label, widest), wrapText(isolated(text), TEXT_COLUMNS - widest)),
  );
}

/** In the first lines: a mail may be read no further. */
function cautionBlock({ head }: ReportModel): string[] {
  const cautions = cautionLines(head);
  return cautions.length > 0
    ? [...cautions.flatMap((line) => hung('CAUTION: ', wrapText(line, TEXT_COLUMNS - 9))), '']
    : [];
}

/** What went to whom, under the totals. */
const handOverBlock = ({ handOvers }: ReportModel): string[] =>
  handOvers.length > 0 ? ['', 'HANDED OVER', ...handOvers.map(handOverText).flatMap(listed)] : [];

const listed = (text: string): string[] => hung('- ', wrapText(text, TEXT_COLUMNS - 2));

function layoutLines({ layout }: TrackList): string[] {
  const used = usedTracks(layout);
  const unused = unusedTracks(layout);
  const widest = Math.min(12, Math.max(0, ...used.map(({ number }) => textWidth(number)))) + 4;
  const lines = used.flatMap(({ number, lines }) => {
    const lead = `${' '.repeat(Math.max(0, widest - 2 - textWidth(number)))}${isolated(number)}  `;
    return hung(
      lead,
      lines.flatMap((line) => wrapText(line, TEXT_COLUMNS - textWidth(lead))),
    );
  });
  const none =
    unused.length > 0 ? wrapText(`Nobody on: ${unused.map(isolated).join(', ')}`, TEXT_COLUMNS) : [];
  return [...lines, ...none];
}

const WIDEST_NAME = 14;

function takeBlocks(model: ReportModel): TextBlock[] {
  const printed = model.takes.map(printedTake);
  const widest = (of: (take: PrintedTake) => string) =>
    Math.min(24, Math.max(0, ...printed.map((take) => textWidth(of(take)))));
  const columns: Columns = {
    name: Math.min(WIDEST_NAME, widest(({ text }) => text) + 2) + 1,
    file: widest(({ file }) => file),
    start: widest(({ start }) => start),
    length: widest(({ length }) => length),
  };
  // Takes with the same chain share their tracks.
  const wrapped = new Map<readonly string[], readonly string[]>();
  const tracksOf = ({ lists }: PrintedTake): readonly string[] =>
    lists.flatMap((units) => {
      const lines = wrapped.get(units) ?? wrapUnits(units, ' · ', TEXT_COLUMNS - columns.name);
      wrapped.set(units, lines);
      return lines;
    });
  return model.takes.map((take, at) => {
    const title = at === 0 ? ['', 'TAKES'] : [];
    const rollLine = take.rollHeading ? ['', take.rollHeading] : [];
    return {
      part: 'takes',
      take: take.takeId,
      lines: [...title, ...rollLine, ...takeText(printed[at]!, columns, tracksOf(printed[at]!))],
    };
  });
}

interface Columns {
  readonly name: number;
  readonly file: number;
  readonly start: number;
  readonly length: number;
}

/** A circled take is in brackets, as close to a circle as a mail comes, and says so in a word too. */
function takeText(take: PrintedTake, columns: Columns, tracks: readonly string[]): string[] {
  const text = isolated(take.text);
  const name = padTo(take.circled ? `(${text})` : ` ${text} `, columns.name);
  const cells = [
    padTo(isolated(take.file), columns.file),
    padTo(take.start, columns.start),
    take.length.padStart(columns.length),
  ];
  const width = TEXT_COLUMNS - columns.name;
  const first = wrapUnits([cells.join('  ').trimEnd(), take.words.join(', ')].filter(Boolean), '  ', width);
  const lines = [
    ...first,
    ...(take.names ? wrapText(isolated(take.names), width) : []),
    ...take.also.flatMap((text) => wrapText(text, width)),
    ...tracks,
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
