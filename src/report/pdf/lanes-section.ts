import type { ReportModel } from '../model.ts';
import { dayPictures, type PicturePart, pictureParts, pictureTitle } from '../printed/day-picture.ts';
import { takeNameParts } from '../printed/take-name.ts';
import { fitting, shortened } from './fitted-text.ts';
import type { Flow } from './flow.ts';
import { heading } from './head-section.ts';
import type { Style } from './paper.ts';
import { bandAt, type Grid, GUTTER, legend, NUMBER } from './picture-section.ts';

/** A narrower take cannot show its number. */
const NARROWEST = 11;
const WIDEST = 40;
const ROW = 8.6;
const HEAD = 19;
const FOOT = 9;
const TITLE = 46;
const SLATE: Style = { size: 6.4, weight: 'bold', ink: 'ink' };
const TAKE: Style = { size: 5.8, weight: 'regular', ink: 'ink' };

interface Lanes {
  readonly title: string;
  readonly parts: readonly PicturePart[];
  readonly column: number;
  readonly height: number;
}

/** One picture for each recorder with its own tracks. */
const lanesOf = (flow: Flow, model: ReportModel): Lanes[] =>
  dayPictures(model)
    .filter(({ columns, rows }) => columns.length > 0 && rows.length > 0)
    .map((picture) => lanes(flow, picture));

function lanes(flow: Flow, picture: ReturnType<typeof dayPictures>[number]): Lanes {
  const width = flow.width - GUTTER;
  const parts = pictureParts(picture, Math.floor(width / NARROWEST));
  return {
    title: pictureTitle(picture),
    parts,
    column: Math.min(WIDEST, width / parts[0]!.columns.length),
    height: TITLE + parts.length * (HEAD + picture.rows.length * ROW + FOOT),
  };
}

/** More of a page than this is no glance: the list of takes would begin too late. */
const GLANCE = 0.55;

/** Whether the picture of the day can stand before the takes. */
export function fitsBeforeTakes(flow: Flow, model: ReportModel): boolean {
  const height = lanesOf(flow, model).reduce((sum, one) => sum + one.height, 0);
  return height < flow.pen.paper.height * GLANCE;
}

/** The picture of the day in lanes: takes across, tracks down, names once a run. */
export function lanesSection(flow: Flow, model: ReportModel): void {
  for (const { title, parts, column, height } of lanesOf(flow, model)) {
    heading(flow, title, Math.min(height, 200));
    legend(flow);
    for (const part of parts) {
      const tall = HEAD + part.rows.length * ROW;
      flow.need(tall);
      partAt(flow, part, { x: flow.left + GUTTER, y: flow.y + HEAD, column, row: ROW });
      flow.y += tall + FOOT;
    }
  }
}

function partAt(flow: Flow, part: PicturePart, grid: Grid): void {
  const { pen } = flow;
  const height = part.rows.length * grid.row + 1;
  for (const at of part.columns.keys()) headAt(flow, part, at, grid, height);
  const end = grid.x + part.columns.length * grid.column;
  pen.line(end, grid.y, end, grid.y + height);
  for (const [at, { number, bands }] of part.rows.entries()) {
    const y = grid.y + at * grid.row + 0.8;
    const style = fitting(pen, number, NUMBER, GUTTER - 6);
    pen.text(number, grid.x - 6, y + grid.row / 2 + 1.8, style, 'right');
    for (const band of bands) bandAt(flow, band, y, grid, 1.6);
  }
}

/** A take's number, in an oval if it is circled, and over the first of a slate the slate. */
function headAt(flow: Flow, { columns, first }: PicturePart, at: number, grid: Grid, height: number): void {
  const { pen } = flow;
  const { text, circled, startsSetup } = columns[at]!;
  const { slate, number } = takeNameParts(text);
  const begins = at === 0 || startsSetup;
  const x = grid.x + at * grid.column;
  const isEdge = begins && first + at > 0;
  pen.line(
    x,
    grid.y - (begins ? HEAD - 1 : 9),
    x,
    grid.y + height,
    isEdge ? 'ink' : 'line',
    isEdge ? 0.5 : 0.4,
  );
  if (begins && slate) {
    const next = columns.findIndex((column, place) => place > at && column.startsSetup);
    const room = ((next < 0 ? columns.length : next) - at) * grid.column - 4;
    pen.text(shortened(pen, slate, SLATE, room), x + 2, grid.y - 12, SLATE);
  }
  const middle = x + grid.column / 2;
  pen.text(number, middle, grid.y - 3, fitting(pen, number, TAKE, grid.column - 4), 'middle');
  if (circled) pen.oval(middle, grid.y - 5, grid.column / 2 - 0.8, 4, 0.6);
}
