import { columnsOf } from './cast/cast-columns.ts';
import { sceneColumnsOf } from './scenes/scene-columns.ts';

/** A piece of text on a page: where it begins and ends, and its line, in points from the bottom. */
export interface PageText {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly height: number;
}

interface Cell {
  text: string;
  readonly from: number;
  to: number;
}

/** Pieces within half a line's height of each other stand on one line. */
function inLines(pieces: readonly PageText[]): PageText[][] {
  const lines: PageText[][] = [];
  for (const piece of [...pieces].sort((a, b) => b.y - a.y || a.from - b.from)) {
    const line = lines.at(-1);
    const first = line?.[0];
    if (first && first.y - piece.y < Math.max(2, Math.min(first.height, piece.height) / 2)) line!.push(piece);
    else lines.push([piece]);
  }
  return lines.map((line) => line.sort((a, b) => a.from - b.from));
}

/** Words a wide space apart are cells of their own. */
function cellsOf(line: readonly PageText[]): Cell[] {
  const cells: Cell[] = [];
  for (const { text, from, to, height } of line) {
    if (text.trim() === '') continue;
    const last = cells.at(-1);
    const gap = last ? from - last.to : Number.POSITIVE_INFINITY;
    if (!last || gap > Math.max(3, height * 0.8)) cells.push({ text: text.trim(), from, to });
    else {
      last.text += `${gap > height * 0.12 ? ' ' : ''}${text.trim()}`;
      last.to = Math.max(last.to, to);
    }
  }
  return cells;
}

/** The column of a heading that a cell stands under: the one it overlaps most, or else the nearest. */
function columnOf(cell: Cell, heading: readonly Cell[]): number {
  const overlap = (one: Cell): number => Math.min(one.to, cell.to) - Math.max(one.from, cell.from);
  let best = 0;
  for (const [at, one] of heading.entries()) if (overlap(one) > overlap(heading[best]!)) best = at;
  return best;
}

/** Cells in the columns of the heading above, so that an empty one stays in its place. */
function underHeading(cells: readonly Cell[], heading: readonly Cell[]): string {
  const columns: string[] = heading.map(() => '');
  for (const cell of cells) {
    const at = columnOf(cell, heading);
    columns[at] = columns[at] === '' ? cell.text : `${columns[at]} ${cell.text}`;
  }
  return columns.join('\t');
}

/**
 * The lines of a page as text. Cells are set apart by tabs, and stand under the columns of the last heading of
 * scenes or cast; a line across the page stands as it is.
 */
export function linesOfPage(pieces: readonly PageText[]): string[] {
  let heading: readonly Cell[] | null = null;
  return inLines(pieces).flatMap((line) => {
    const cells = cellsOf(line);
    if (cells.length === 0) return [];
    const plain = cells.map(({ text }) => text).join('\t');
    if (sceneColumnsOf(plain) || (cells.length > 2 && columnsOf(plain))) {
      heading = cells;
      return [plain];
    }
    const isRow = heading !== null && cells.length > 1;
    return [isRow ? underHeading(cells, heading!) : plain];
  });
}
