import { cleanLine } from '../clean-text.ts';
import { fittedLines } from './fitted-text.ts';
import { Flow } from './flow.ts';
import type { SystemLetters } from './letters.ts';
import { PAPERS, type PaperId, STYLES } from './paper.ts';
import { type Fonts, Pen } from './pen.ts';

/** A sheet to print and tape into a lid: a title, a table, and text under it. */
export interface PrintedSheet {
  readonly title: string;
  /** Under the title: production, day, date. */
  readonly under: string;
  readonly columns: readonly {
    readonly title: string /** Parts of the page's width. */;
    readonly share: number;
  }[];
  readonly rows: readonly (readonly string[])[];
  readonly notes: readonly string[];
  /** `2026-10-07`, or empty. */
  readonly date: string;
}

const GAP = 8;
const LEADING = 11;

/** The sheet as portrait pages, the table's head on each. Same sheet and fonts, same bytes. */
export function sheetPdf(
  sheet: PrintedSheet,
  {
    fonts,
    letters,
    paper = 'a4',
  }: { readonly fonts: Fonts; readonly letters?: SystemLetters | undefined; readonly paper?: PaperId },
): Uint8Array<ArrayBuffer> {
  const pen = new Pen(PAPERS[paper], fonts, letters);
  const flow = new Flow(pen);
  flow.y += 16;
  pen.text(cleanLine(sheet.title), flow.left, flow.y, STYLES.title);
  flow.y += 15;
  pen.text(cleanLine(sheet.under), flow.left, flow.y, STYLES.subtitle);
  flow.y += 8;
  const places = placesOf(flow, sheet);
  const head = (): void => {
    flow.y += LEADING;
    for (const [at, { title }] of sheet.columns.entries())
      pen.text(title, places[at]!.x, flow.y, STYLES.label);
    flow.y += 4;
    pen.line(flow.left, flow.y, flow.right, flow.y, 'ink', 0.8);
  };
  head();
  flow.onNewPage = head;
  for (const row of sheet.rows) rowAt(flow, row, places);
  flow.onNewPage = undefined;
  for (const note of sheet.notes) {
    for (const line of fittedLines(pen, cleanLine(note), STYLES.soft, flow.width)) {
      flow.need(LEADING);
      flow.y += LEADING;
      pen.text(line, flow.left, flow.y, STYLES.soft);
    }
  }
  return pen.bytes(cleanLine(`${sheet.title} ${sheet.under}`), '0'.repeat(32), sheet.date);
}

interface Place {
  readonly x: number;
  readonly width: number;
}

function placesOf(flow: Flow, { columns }: PrintedSheet): Place[] {
  const all = columns.reduce((sum, { share }) => sum + share, 0);
  let x = flow.left;
  return columns.map(({ share }) => {
    const place = { x, width: (flow.width * share) / all - GAP };
    x += place.width + GAP;
    return place;
  });
}

/** One row, as tall as its tallest cell, never split across pages. */
function rowAt(flow: Flow, row: readonly string[], places: readonly Place[]): void {
  const cells = row.map((text, at) =>
    fittedLines(flow.pen, cleanLine(text), at === 0 ? STYLES.strong : STYLES.value, places[at]!.width),
  );
  const tall = Math.max(1, ...cells.map((lines) => lines.length)) * LEADING + 4;
  flow.need(tall);
  for (const [at, lines] of cells.entries()) {
    for (const [down, line] of lines.entries()) {
      flow.pen.text(
        line,
        places[at]!.x,
        flow.y + LEADING * (down + 1),
        at === 0 ? STYLES.strong : STYLES.value,
      );
    }
  }
  flow.y += tall;
  flow.pen.line(flow.left, flow.y, flow.right, flow.y);
}
