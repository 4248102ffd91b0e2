import { isolated } from '../isolated.ts';
import type { ReportModel } from '../model.ts';
import {
  type BandPiece,
  type DayPicture,
  dayPictures,
  type PictureColumn,
  type PicturePart,
  pictureParts,
} from '../printed/day-picture.ts';
import { recordersText } from '../recorders-text.ts';
import { fitting, shortened } from './fitted-text.ts';
import type { Flow } from './flow.ts';
import { heading } from './head-section.ts';
import { STYLES, type Style } from './paper.ts';

export const GUTTER = 24;
/** A narrower take cannot show its name. */
const NARROWEST = 21;
const WIDEST = 46;
const HEAD = 20;
const FOOT = 16;
const TITLE = 70;
const SHORTEST = 7;
const USUAL = 11.5;
const TALLEST = 15;
const NAME: Style = { size: 6.4, weight: 'regular', ink: 'ink' };
const LABEL: Style = { size: 6.6, weight: 'bold', ink: 'ink' };
export const NUMBER: Style = { size: 7.4, weight: 'bold', ink: 'ink' };

/** Dimensions of one part of the picture on the page. */
export interface Grid {
  readonly x: number;
  readonly y: number;
  readonly column: number;
  readonly row: number;
}

/** The picture of the day, on its own pages; one for each recorder with its own tracks. */
export function pictureSection(flow: Flow, model: ReportModel): void {
  for (const { on, ...picture } of dayPictures(model))
    drawn(flow, picture, on.length > 0 ? ` on ${recordersText(on)}` : '');
}

/** In parts below each other like lines of music. */
function drawn(flow: Flow, picture: DayPicture, where: string): void {
  if (picture.columns.length === 0 || picture.rows.length === 0) return;
  const width = flow.width - GUTTER;
  const parts = pictureParts(picture, Math.floor(width / NARROWEST));
  const column = Math.min(WIDEST, width / parts[0]!.columns.length);
  const tall = TITLE + parts.length * (HEAD + picture.rows.length * TALLEST + FOOT);
  if (tall > flow.room) {
    flow.newPage();
    flow.y -= 14;
  }
  heading(flow, `Who was on which track${where}`);
  legend(flow);
  const row = rowHeight(flow.room, picture.rows.length, parts.length);
  for (const part of parts) {
    flow.need(HEAD + part.rows.length * row);
    partAt(flow, part, { x: flow.left + GUTTER, y: flow.y + HEAD, column, row });
    flow.y += HEAD + part.rows.length * row + FOOT;
  }
}

/** As many parts on a page as stay readable, then as tall as possible. */
function rowHeight(room: number, rows: number, count: number): number {
  const fit = Math.floor((room + FOOT) / (HEAD + rows * USUAL + FOOT));
  const parts = Math.max(1, Math.min(count, fit));
  return Math.max(SHORTEST, Math.min(TALLEST, ((room + FOOT) / parts - HEAD - FOOT) / rows));
}

function partAt(flow: Flow, part: PicturePart, grid: Grid): void {
  const height = part.rows.length * grid.row + 2;
  for (const [at, column] of part.columns.entries()) columnAt(flow, column, at, grid, height);
  const end = grid.x + part.columns.length * grid.column;
  flow.pen.line(end, grid.y, end, grid.y + height);
  for (const [at, { number, bands }] of part.rows.entries()) {
    const y = grid.y + at * grid.row + 1.5;
    const style = fitting(flow.pen, number, NUMBER, GUTTER - 6);
    flow.pen.text(number, grid.x - 6, y + grid.row / 2 + 1.6, style, 'right');
    for (const band of bands) bandAt(flow, band, y, grid);
  }
}

function columnAt(flow: Flow, column: PictureColumn, at: number, grid: Grid, height: number): void {
  const { pen } = flow;
  const x = grid.x + at * grid.column;
  pen.line(
    x,
    grid.y - (column.startsSetup ? 4 : 0),
    x,
    grid.y + height,
    column.startsSetup ? 'ink' : 'line',
    0.5,
  );
  const style = fitting(pen, column.text, NAME, grid.column - 5);
  const middle = x + grid.column / 2;
  pen.text(column.text, middle, grid.y - 7, style, 'middle');
  if (column.circled) pen.oval(middle, grid.y - 9.2, grid.column / 2 - 0.6, 5.2, 0.7);
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A band and its edge: plain for one voice, rungs for a gang, a zigzag for a clash, strokes if muted. */
export function bandAt(flow: Flow, band: BandPiece, y: number, grid: Grid, between = 3): void {
  const x = grid.x + band.from * grid.column + (band.comesFrom ? 0 : 1);
  const end = grid.x + (band.to + 1) * grid.column - (band.goesOn ? 0 : 1);
  const box: Box = { x, y, width: end - x, height: grid.row - between };
  if (band.state !== 'empty') flow.pen.fill(box.x, box.y, box.width, box.height, 'band');
  patternIn(flow, band.state, box);
  edges(flow, band, box);
  const label = labelIn(flow, band, box.width - 5);
  if (label === '') return;
  if (band.state === 'gang' || band.state === 'muted') {
    flow.pen.fill(x + 1.4, y + 1.2, flow.pen.width(label, LABEL) + 3.2, box.height - 2.4, 'paper');
  }
  flow.pen.text(label, x + 3, y + box.height / 2 + 2.4, LABEL);
}

/** The name and the word; if both do not fit, the shape replaces the word. */
function labelIn({ pen }: Flow, { name, word }: BandPiece, width: number): string {
  const both = word ? `${isolated(name)} ${word}` : name;
  return pen.width(both, LABEL) <= width ? both : shortened(pen, name, LABEL, width);
}

function edges(flow: Flow, { state, comesFrom, goesOn }: BandPiece, { x, y, width, height }: Box): void {
  const { pen } = flow;
  const thick = state === 'gang' ? 1.1 : 0.6;
  if (state === 'clash') {
    zigzag(flow, x, y, width);
    zigzag(flow, x, y + height, width);
  } else {
    pen.line(x, y, x + width, y, 'ink', thick);
    pen.line(x, y + height, x + width, y + height, 'ink', thick);
  }
  if (!comesFrom) pen.line(x, y, x, y + height, 'ink', thick);
  if (!goesOn) pen.line(x + width, y, x + width, y + height, 'ink', thick);
}

const TOOTH = 2.4;

function zigzag(flow: Flow, x: number, y: number, width: number): void {
  const teeth = Math.max(2, Math.round(width / TOOTH / 2) * 2);
  const step = width / teeth;
  const steps = Array.from({ length: teeth }, (_, at): [number, number] => [step, at % 2 === 0 ? 1.8 : -1.8]);
  flow.pen.steps(x, y - 0.9, steps, 'ink', 0.8);
}

function patternIn({ pen }: Flow, state: BandPiece['state'], { x, y, width, height }: Box): void {
  if (state === 'gang') {
    for (let rung = 2; rung < height - 0.5; rung += 2)
      pen.line(x, y + rung, x + width, y + rung, 'ink', 0.35);
  }
  if (state === 'muted') {
    for (let at = x - height + 3; at < x + width; at += 3.2) {
      const from = Math.max(at, x);
      const to = Math.min(at + height, x + width);
      if (to > from) pen.line(from, y + height - (from - at), to, y + height - (to - at), 'soft', 0.4);
    }
  }
}

/** The four shapes with their words. */
export function legend(flow: Flow): void {
  const samples = [
    ['single', 'one voice'],
    ['gang', 'ganged'],
    ['clash', 'clash'],
    ['muted', 'muted'],
  ] as const;
  let x = flow.left;
  for (const [state, word] of samples) {
    const box: Box = { x, y: flow.y, width: 22, height: 8 };
    flow.pen.fill(box.x, box.y, box.width, box.height, 'band');
    patternIn(flow, state, box);
    edges(flow, { state, comesFrom: false, goesOn: false } as BandPiece, box);
    flow.pen.text(word, x + 27, flow.y + 6.6, STYLES.label);
    x += 27 + flow.pen.width(word, STYLES.label) + 16;
  }
  flow.pen.oval(x + 10, flow.y + 4, 10, 4.6, 0.7);
  flow.pen.text('circled take', x + 25, flow.y + 6.6, STYLES.label);
  flow.y += 18;
}
