import { SECOND_FORM } from '../form.ts';
import { isolated } from '../isolated.ts';
import { nobodyOn } from '../list/take-list.ts';
import type { ReportModel } from '../model.ts';
import { matterText } from '../printed/matter-words.ts';
import { cautionLines } from '../printed/recorder-words.ts';
import { headLines, totalsLines } from '../printed/words.ts';
import { fittedLines } from './fitted-text.ts';
import type { Flow } from './flow.ts';
import { STYLES } from './paper.ts';

const COLUMNS = 4;
const GUTTER = 14;
const LEADING = 11;

/** In the title already. */
const TITLED = new Set(['Production', 'Day', 'Date', 'Unit']);
const WIDE = new Set(['Units', 'Timecode source', 'Mics', 'Listeners', 'Remarks']);

/** Title, people and equipment, and the totals. */
export function headSection(flow: Flow, model: ReportModel, kicker: string): void {
  titleBlock(flow, model, kicker);
  const cautions = cautionLines(model.head);
  strokedLines(flow, 'Caution', cautions);
  if (cautions.length > 0) flow.y += 8;
  const pairs = headLines(model.head).filter(([label]) => !TITLED.has(label));
  grid(
    flow,
    pairs.filter(([label]) => !WIDE.has(label)),
  );
  for (const [label, text] of pairs.filter(([label]) => WIDE.has(label))) labelledText(flow, label, text);
  rule(flow, 'line');
  const isList = model.form > SECOND_FORM && model.takes.length > 0;
  grid(flow, [...totalsLines(model), ...(isList ? nobodyOn(model.lists) : [])]);
  rule(flow, 'ink');
}

function titleBlock(flow: Flow, { head }: ReportModel, kicker: string): void {
  const { pen } = flow;
  const title = head.production || 'Sound report';
  const side = pen.width(kicker, STYLES.subtitle) + GUTTER;
  flow.y += 14;
  pen.text(kicker, flow.right, flow.y, STYLES.subtitle, 'right');
  for (const line of fittedLines(pen, title, STYLES.title, flow.width - side)) {
    flow.need(26);
    pen.text(line, flow.left, flow.y, STYLES.title);
    flow.y += 25;
  }
  flow.y -= 9;
  const day = [head.label, head.date, head.unit].filter(Boolean).map(isolated).join(' · ');
  for (const line of day ? fittedLines(pen, day, STYLES.subtitle, flow.width) : []) {
    flow.need(14);
    pen.text(line, flow.left, flow.y, STYLES.subtitle);
    flow.y += 14;
  }
  flow.y -= 4;
  rule(flow, 'ink');
}

function rule(flow: Flow, ink: 'ink' | 'line'): void {
  flow.pen.line(flow.left, flow.y, flow.right, flow.y, ink, ink === 'ink' ? 0.8 : 0.4);
  flow.y += 6;
}

/** Small labels over their texts, four to a row; a text that is too long takes more lines. */
function grid(flow: Flow, pairs: readonly (readonly [string, string])[]): void {
  const { pen } = flow;
  const width = (flow.width - GUTTER * (COLUMNS - 1)) / COLUMNS;
  for (let at = 0; at < pairs.length; at += COLUMNS) {
    const row = pairs
      .slice(at, at + COLUMNS)
      .map(([label, text]) => ({ label, lines: fittedLines(pen, text, STYLES.value, width) }));
    const height = 9 + LEADING * Math.max(...row.map(({ lines }) => lines.length));
    if (height > flow.bottom - 60) {
      for (const [label, text] of pairs.slice(at, at + COLUMNS)) labelledText(flow, label, text);
      continue;
    }
    flow.need(height);
    for (const [column, { label, lines }] of row.entries()) {
      const x = flow.left + column * (width + GUTTER);
      pen.text(label, x, flow.y + 7, STYLES.label);
      for (const [line, text] of lines.entries())
        pen.text(text, x, flow.y + 18 + line * LEADING, STYLES.value);
    }
    flow.y += height + 6;
  }
}

function labelledText(flow: Flow, label: string, text: string): void {
  flow.need(20);
  flow.pen.text(label, flow.left, flow.y + 7, STYLES.label);
  flow.y += 18;
  for (const line of fittedLines(flow.pen, text, STYLES.value, flow.width)) {
    flow.need(LEADING);
    flow.pen.text(line, flow.left, flow.y, STYLES.value);
    flow.y += LEADING;
  }
}

/** A heading that never stands alone at the foot of a page. */
export function heading(flow: Flow, text: string, keepWith = 40): void {
  flow.need(24 + keepWith);
  flow.y += 20;
  flow.pen.text(text, flow.left, flow.y, STYLES.section);
  flow.y += 8;
}

/** Lines with a stroke at their left edge, for what the reader must not miss. */
export function strokedLines(flow: Flow, title: string, texts: readonly string[]): void {
  if (texts.length === 0) return;
  heading(flow, title);
  for (const text of texts) {
    for (const line of fittedLines(flow.pen, text, STYLES.value, flow.width - 10)) {
      flow.need(12);
      flow.pen.line(flow.left + 1, flow.y, flow.left + 1, flow.y + 12, 'ink', 1.6);
      flow.pen.text(line, flow.left + 10, flow.y + 9, STYLES.value);
      flow.y += 12;
    }
  }
}

export const openSection = (flow: Flow, { open }: ReportModel): void =>
  strokedLines(flow, 'Not settled', open.map(matterText));
