import { cleanNote } from '../clean-text.ts';
import { isolated } from '../isolated.ts';
import type { ReportModel } from '../model.ts';
import { tracksTitle } from '../printed/layout-words.ts';
import { matterText } from '../printed/matter-words.ts';
import { type PrintedTake, printedTake } from '../printed/printed-take.ts';
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

// The text as the first two forms had it, so that one sent in those comes back byte for byte.

/** The tracks, and then the takes with all their tracks. */
export function secondFormBlocks(model: ReportModel, { revision, signature = '' }: Extras = {}): TextBlock[] {
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
    ]),
    ...(signed ? [block('signature', ['', ...wrapText(signed, TEXT_COLUMNS)])] : []),
  ];
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
