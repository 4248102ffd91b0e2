import type { ReportModel } from '../model.ts';
import { tracksTitle, unusedTracks, usedTracks } from '../printed/layout-words.ts';
import type { TrackList } from '../track-lists.ts';
import { fittedLines } from './fitted-text.ts';
import type { Flow } from './flow.ts';
import { heading } from './head-section.ts';
import { STYLES } from './paper.ts';

const GUTTER = 20;
const LEADING = 12;

interface Line {
  readonly number: string;
  readonly text: string;
  /** The first line of a track has a little space above it. */
  readonly first: boolean;
}

/** The tracks of each recorder that has its own. */
export function tracksSection(flow: Flow, model: ReportModel): void {
  for (const list of model.lists) if (list.layout.length > 0) tracksOf(flow, list);
}

/** Every track that was used, with the take from which each name holds, in two columns. */
function tracksOf(flow: Flow, list: TrackList): void {
  heading(flow, tracksTitle(list));
  const used = usedTracks(list.layout);
  const numbers = used.map(({ number }) => flow.pen.width(number, STYLES.strong));
  const indent = Math.min(60, Math.max(12, ...numbers)) + 8;
  const width = (flow.width - GUTTER) / 2;
  const lines = used.flatMap(({ number, lines }) =>
    lines
      .flatMap((text) => fittedLines(flow.pen, text, STYLES.value, width - indent))
      .map((text, at): Line => ({ number: at === 0 ? number : '', text, first: at === 0 })),
  );
  columns(flow, lines, indent, width);
  const none = unusedTracks(list.layout);
  if (none.length > 0) {
    for (const line of fittedLines(flow.pen, `Nobody on: ${none.join(', ')}`, STYLES.soft, flow.width)) {
      flow.need(LEADING);
      flow.y += LEADING;
      flow.pen.text(line, flow.left, flow.y, STYLES.soft);
    }
  }
}

/** Fills two columns of about equal height, page after page. */
function columns(flow: Flow, lines: readonly Line[], indent: number, width: number): void {
  let rest = lines;
  while (rest.length > 0) {
    const fit = Math.max(1, Math.floor((flow.room - 4) / LEADING));
    const tall = Math.min(fit, trackEnd(rest, Math.ceil(rest.length / 2)));
    column(flow, rest.slice(0, tall), flow.left, indent);
    column(flow, rest.slice(tall, tall + fit), flow.left + width + GUTTER, indent);
    flow.y += LEADING * Math.max(tall, Math.min(fit, rest.length - tall)) + 2;
    rest = rest.slice(tall + fit);
    if (rest.length > 0) flow.newPage();
  }
}

/** The next index from `at` on where a track begins, so that none is split needlessly. */
function trackEnd(lines: readonly Line[], at: number): number {
  const found = lines.findIndex(({ first }, place) => place >= at && first);
  return found < 0 || found > at + 6 ? at : found;
}

function column(flow: Flow, lines: readonly Line[], x: number, indent: number): void {
  for (const [at, { number, text }] of lines.entries()) {
    const y = flow.y + LEADING * (at + 1) - 3;
    flow.pen.text(number, x + indent - 8, y, STYLES.strong, 'right');
    flow.pen.text(text, x + indent, y, STYLES.value);
  }
}
