import { STROKES_HIGH, STROKES_WIDE, type Stroke, strokesOf } from '../../shared/strokes.ts';
import type { HandOverLine } from '../hand-over-lines.ts';
import { isolated } from '../isolated.ts';
import type { ReportModel } from '../model.ts';
import { handOverText } from '../printed/hand-over-words.ts';
import { fittedLines } from './fitted-text.ts';
import type { Flow } from './flow.ts';
import { heading } from './head-section.ts';
import { STYLES } from './paper.ts';

const LEADING = 11;
const SIGNATURE = { width: 150, height: (150 * STROKES_HIGH) / STROKES_WIDE } as const;
const INK = 0.9;

/** What was handed over and to whom, each with its signature. */
export function handOverSection(flow: Flow, { handOvers }: ReportModel): void {
  if (handOvers.length === 0) return;
  heading(flow, 'Handed over', LEADING);
  for (const line of handOvers) {
    const texts = fittedLines(flow.pen, handOverText(line), STYLES.value, flow.width);
    flow.need(texts.length * LEADING + (line.strokes ? SIGNATURE.height + 24 : 6));
    for (const text of texts) {
      flow.y += LEADING;
      flow.pen.text(text, flow.left, flow.y, STYLES.value);
    }
    if (line.strokes) signatureOf(flow, line);
    flow.y += 6;
  }
}

/** On a line with the name under it. */
function signatureOf(flow: Flow, { strokes, to }: HandOverLine): void {
  flow.y += 4;
  for (const stroke of strokesOf(strokes)) strokeAt(flow, stroke);
  flow.y += SIGNATURE.height + 2;
  flow.pen.line(flow.left, flow.y, flow.left + SIGNATURE.width, flow.y, 'ink');
  flow.y += 9;
  flow.pen.text(isolated(to), flow.left, flow.y, STYLES.soft);
}

function strokeAt({ pen, left, y }: Flow, stroke: Stroke): void {
  const scale = SIGNATURE.width / STROKES_WIDE;
  const points = stroke.map(([across, down]): [number, number] => [left + across * scale, y + down * scale]);
  const [[startX, startY] = [left, y], ...rest] = points;
  if (rest.length === 0) pen.oval(startX, startY, INK / 4, INK / 4, INK / 2);
  let [beforeX, beforeY] = [startX, startY];
  const steps = rest.map(([x, down]): [number, number] => {
    const step: [number, number] = [x - beforeX, down - beforeY];
    [beforeX, beforeY] = [x, down];
    return step;
  });
  if (steps.length > 0) pen.steps(startX, startY, steps, 'ink', INK);
}
