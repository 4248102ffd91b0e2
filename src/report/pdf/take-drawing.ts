import { fittedLines, fitting } from './fitted-text.ts';
import type { Flow } from './flow.ts';
import { STYLES, type Style } from './paper.ts';

export const LEADING = 10;
const UNIT_GAP = 9;
const DASH = '– ';

/** A piece of a line that is not broken where a break between pieces will do. */
export interface Unit {
  readonly text: string;
  readonly style: Style;
}

/** Breaks between tracks if possible; a track wider than a line is broken like any text. */
export function unitLines(flow: Flow, units: readonly Unit[], width: number): Unit[][] {
  const lines: Unit[][] = [];
  let left = 0;
  for (const { text, style } of units) {
    const needed = flow.pen.width(text, style);
    if (needed > width) {
      for (const piece of fittedLines(flow.pen, text, style, width)) lines.push([{ text: piece, style }]);
      left = 0;
      continue;
    }
    if (lines.length === 0 || needed > left) {
      lines.push([]);
      left = width;
    }
    lines.at(-1)!.push({ text, style });
    left -= needed + UNIT_GAP;
  }
  return lines;
}

/** A note, split into lines that leave room for its dash in `width` points. */
export const noteLines = (flow: Flow, note: string, width: number): string[] =>
  fittedLines(flow.pen, note, STYLES.value, width - dashWidth(flow));

const dashWidth = ({ pen }: Flow): number => pen.width(DASH, STYLES.value);

/** Draws such lines one under the other, `indent` points from the margin; pages turn where they must. */
export function drawUnits(flow: Flow, lines: readonly (readonly Unit[])[], indent: number): void {
  for (const units of lines) {
    flow.need(LEADING);
    flow.y += LEADING;
    let x = flow.left + indent;
    for (const { text, style } of units) {
      flow.pen.text(text, x, flow.y, style);
      x += flow.pen.width(text, style) + UNIT_GAP;
    }
  }
}

/** Draws a note of `noteLines`, with a dash before its first line. */
export function drawNote(flow: Flow, lines: readonly string[], indent: number): void {
  const at = flow.left + indent;
  for (const [index, line] of lines.entries()) {
    flow.need(LEADING);
    flow.y += LEADING;
    if (index === 0) flow.pen.text(DASH, at, flow.y, STYLES.value);
    flow.pen.text(line, at + dashWidth(flow), flow.y, STYLES.value);
  }
}

/** The take in the middle of a column of `width` points. A circled one has an oval, which survives a photocopier. */
export function drawTakeName(
  { pen, left }: Flow,
  { text, circled }: { readonly text: string; readonly circled: boolean },
  { y, width, tall }: { readonly y: number; readonly width: number; readonly tall: number },
): void {
  const middle = left + width / 2 - 4;
  const style = fitting(pen, text, STYLES.strong, width - 16);
  pen.text(text, middle, y, style, 'middle');
  if (circled) pen.oval(middle, y - 3.1, Math.max(15, pen.width(text, style) / 2 + 6), tall);
}
