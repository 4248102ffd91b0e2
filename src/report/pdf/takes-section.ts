import type { PartId } from '../../day/model.ts';
import type { ReportModel } from '../model.ts';
import { type PrintedTake, printedTake } from '../printed/printed-take.ts';
import type { TakeLine } from '../take-lines.ts';
import type { TakeTracks } from '../take-tracks.ts';
import type { TrackLine } from '../track-lines.ts';
import { fittedLines } from './fitted-text.ts';
import type { Flow } from './flow.ts';
import { heading } from './head-section.ts';
import { STYLES } from './paper.ts';
import {
  drawNote,
  drawTakeName,
  drawUnits,
  LEADING,
  noteLines,
  type Unit,
  unitLines,
} from './take-drawing.ts';

const FIRST_LINE = 13.5;
const UNDER_FIRST = 1.5;

/** Where the columns begin, from the left margin. */
const AT = { file: 62, start: 214, length: 276, words: 316 } as const;

/** A take, measured and ready to draw. */
interface Row {
  readonly printed: PrintedTake;
  readonly file: readonly string[];
  readonly words: readonly string[];
  readonly names: readonly string[];
  /** What further recorders have. */
  readonly also: readonly string[];
  readonly tracks: readonly (readonly Unit[])[];
  /** Every note, split into lines. */
  readonly notes: readonly (readonly string[])[];
}

/** The take lines: an oval around circled takes, and in bold the tracks changed since the last take. */
export function takesSection(flow: Flow, model: ReportModel): void {
  // Keeps the column heads, a roll and a first take with it.
  heading(flow, 'Takes', 110);
  if (model.takes.length === 0) {
    flow.pen.text('No takes.', flow.left, flow.y + 10, STYLES.value);
    flow.y += 16;
    return;
  }
  columnHeads(flow, true);
  flow.onNewPage = () => columnHeads(flow, false);
  const before: Before = new Map();
  for (const take of model.takes) {
    if (take.rollHeading) rollLine(flow, take.rollHeading);
    row(flow, measured(flow, take, before));
    if (take.kind !== 'mos') for (const { owner, tracks } of take.lists) before.set(owner, tracks);
  }
  flow.onNewPage = undefined;
}

function columnHeads(flow: Flow, first: boolean): void {
  const { pen, left } = flow;
  const y = flow.y + 7;
  pen.text('Take', left + AT.file / 2 - 4, y, STYLES.label, 'middle');
  pen.text('File', left + AT.file, y, STYLES.label);
  pen.text('Start', left + AT.start, y, STYLES.label);
  pen.text('Length', left + AT.length + 28, y, STYLES.label, 'right');
  if (first) pen.text('bold: changed since the take before', flow.right, y, STYLES.label, 'right');
  flow.y += 12;
  pen.line(left, flow.y, flow.right, flow.y, 'ink', 0.6);
}

function rollLine(flow: Flow, text: string): void {
  flow.need(50);
  flow.y += 14;
  flow.pen.text(text, flow.left + AT.file, flow.y, STYLES.strong);
  flow.y += 5;
  flow.pen.line(flow.left, flow.y, flow.right, flow.y);
}

/** What each recorder's tracks were at the take before. */
type Before = Map<PartId, readonly TrackLine[]>;

function measured(flow: Flow, take: TakeLine, before: Before): Row {
  const { pen } = flow;
  const printed = printedTake(take);
  const width = flow.width - AT.file;
  return {
    printed,
    file: fittedLines(pen, printed.file, STYLES.value, AT.start - AT.file - 8),
    words: fittedLines(pen, printed.words.join(', '), STYLES.strong, flow.width - AT.words),
    names: printed.names ? fittedLines(pen, printed.names, STYLES.small, width) : [],
    also: printed.also.flatMap((text) => fittedLines(pen, text, STYLES.small, width)),
    tracks: take.lists.flatMap((list, at) =>
      unitLines(flow, unitsOf(list, printed.lists[at]!, before.get(list.owner)), width),
    ),
    notes: printed.notes.map((note) => noteLines(flow, note, width)),
  };
}

function unitsOf(
  { tracks, asAt }: TakeTracks,
  texts: readonly string[],
  before: readonly TrackLine[] | undefined,
): Unit[] {
  const known = new Set(before?.map((line) => JSON.stringify(line)));
  return texts.map((text, at): Unit => {
    const isNew =
      before !== undefined && before !== tracks && !asAt && !known.has(JSON.stringify(tracks[at]));
    return { text, style: isNew ? STYLES.smallBold : STYLES.small };
  });
}

function row(flow: Flow, { printed, file, words, names, also, tracks, notes }: Row): void {
  const { pen, left } = flow;
  const topLines = Math.max(1, file.length, words.length);
  const top = FIRST_LINE + (topLines - 1) * LEADING;
  const rest = names.length + also.length + tracks.length + notes.flat().length;
  // A row stays whole unless its notes alone fill a page.
  flow.need(Math.min(top + UNDER_FIRST + rest * LEADING + 6, 200));
  const y = flow.y + FIRST_LINE;
  drawTakeName(flow, printed, { y, width: AT.file, tall: 7 });
  for (const [at, line] of file.entries()) pen.text(line, left + AT.file, y + at * LEADING, STYLES.value);
  pen.text(printed.start, left + AT.start, y, STYLES.value);
  pen.text(printed.length, left + AT.length + 28, y, STYLES.value, 'right');
  for (const [at, line] of words.entries()) pen.text(line, left + AT.words, y + at * LEADING, STYLES.strong);
  flow.y += top + (rest > 0 ? UNDER_FIRST : 0);
  const lines = [...[...names, ...also].map((text) => [{ text, style: STYLES.small }]), ...tracks];
  drawUnits(flow, lines, AT.file);
  if (notes.length > 0) flow.y += UNDER_FIRST;
  for (const note of notes) drawNote(flow, note, AT.file);
  flow.y += 6;
  pen.line(left, flow.y, flow.right, flow.y);
}
