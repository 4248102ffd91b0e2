import { type ListedTake, type ListedUnit, takeList } from '../list/take-list.ts';
import type { ReportModel } from '../model.ts';
import type { Extras } from '../revision/revision.ts';
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

const FIRST_LINE = 11.5;
const UNDER_FIRST = 0.5;
const UNDER = 3.6;

/** Where the columns begin, from the left margin. */
const AT = { file: 60, start: 178, end: 232, length: 286, words: 344 } as const;

/** A take, measured and ready to draw. */
interface Row {
  readonly take: ListedTake;
  readonly file: readonly string[];
  readonly words: readonly string[];
  readonly names: readonly string[];
  /** What further recorders have. */
  readonly also: readonly string[];
  readonly tracks: readonly (readonly Unit[])[];
  /** Every note, split into lines. */
  readonly notes: readonly (readonly string[])[];
}

/** A line a take, and under it its tracks where they change, and its notes. */
export function takeListSection(flow: Flow, model: ReportModel, extras: Extras): void {
  // Keeps the column heads, a roll and a first take with it.
  heading(flow, 'Takes', 90);
  if (model.takes.length === 0) {
    flow.pen.text('No takes.', flow.left, flow.y + 10, STYLES.value);
    flow.y += 16;
    return;
  }
  columnHeads(flow, 'bold: new since the take before');
  const { rolls } = model.head;
  let roll = '';
  flow.onNewPage = () => {
    columnHeads(flow, rolls.length === 1 ? `Roll ${rolls[0]}` : '');
    if (roll) rollLine(flow, `${roll}, continued`);
  };
  for (const take of takeList(model, extras)) {
    if (take.rollHeading) {
      // A heading that opens a page is not a continued one.
      roll = '';
      flow.need(46);
      rollLine(flow, take.rollHeading);
      roll = take.rollHeading;
    }
    row(flow, measured(flow, take));
  }
  flow.onNewPage = undefined;
}

function columnHeads(flow: Flow, right: string): void {
  const { pen, left } = flow;
  const y = flow.y + 7;
  pen.text('Take', left + AT.file / 2 - 4, y, STYLES.label, 'middle');
  pen.text('File', left + AT.file, y, STYLES.label);
  pen.text('Start', left + AT.start, y, STYLES.label);
  pen.text('End', left + AT.end, y, STYLES.label);
  pen.text('Length', left + AT.length, y, STYLES.label);
  pen.text(right, flow.right, y, STYLES.label, 'right');
  flow.y += 11;
  pen.line(left, flow.y, flow.right, flow.y, 'ink', 0.6);
}

function rollLine(flow: Flow, text: string): void {
  flow.y += 13;
  flow.pen.text(text, flow.left + AT.file, flow.y, STYLES.strong);
  flow.y += 4;
  flow.pen.line(flow.left, flow.y, flow.right, flow.y);
}

function measured(flow: Flow, take: ListedTake): Row {
  const { pen } = flow;
  const width = flow.width - AT.file;
  const styled = ({ text, isNew }: ListedUnit): Unit => ({
    text,
    style: isNew ? STYLES.smallBold : STYLES.small,
  });
  return {
    take,
    file: fittedLines(pen, take.file, STYLES.value, AT.start - AT.file - 8),
    words: fittedLines(pen, take.words.join(', '), STYLES.strong, flow.width - AT.words),
    names: take.names ? fittedLines(pen, take.names, STYLES.small, width) : [],
    also: take.also.flatMap((text) => fittedLines(pen, text, STYLES.small, width)),
    tracks: take.lists.flatMap((units) => unitLines(flow, units.map(styled), width)),
    notes: take.notes.map((note) => noteLines(flow, note, width)),
  };
}

function row(flow: Flow, { take, file, words, names, also, tracks, notes }: Row): void {
  const { pen, left } = flow;
  const topLines = Math.max(1, file.length, words.length);
  const top = FIRST_LINE + (topLines - 1) * LEADING;
  const rest = names.length + also.length + tracks.length + notes.flat().length;
  // A row stays whole unless its notes alone fill a page.
  flow.need(Math.min(top + UNDER_FIRST + rest * LEADING + UNDER, 200));
  const from = flow.y;
  const y = flow.y + FIRST_LINE;
  drawTakeName(flow, take, { y, width: AT.file, tall: 6 });
  for (const [at, line] of file.entries()) pen.text(line, left + AT.file, y + at * LEADING, STYLES.value);
  pen.text(take.start, left + AT.start, y, STYLES.value);
  pen.text(take.end, left + AT.end, y, STYLES.value);
  pen.text(take.length, left + AT.length, y, STYLES.value);
  for (const [at, line] of words.entries()) pen.text(line, left + AT.words, y + at * LEADING, STYLES.strong);
  flow.y += top + (rest > 0 ? UNDER_FIRST : 0);
  if (take.isChanged) pen.line(left - 5, from + 2.5, left - 5, flow.y + 2, 'ink', 2);
  const lines = [...[...names, ...also].map((text) => [{ text, style: STYLES.small }]), ...tracks];
  drawUnits(flow, lines, AT.file);
  for (const note of notes) drawNote(flow, note, AT.file);
  flow.y += UNDER;
  pen.line(left, flow.y, flow.right, flow.y);
}
