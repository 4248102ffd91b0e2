import type { TrackState } from '../../day/answers/track-answers.ts';

/** A band of the picture, in units of the drawing. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const TOOTH = 6;

/** Zigzag on both long edges: not intended. */
function zigzag({ x, y, width, height }: Box): string {
  const teeth = Math.max(2, Math.round(width / TOOTH));
  const step = width / teeth / 2;
  const there = `l${step} -2.5l${step} 2.5`.repeat(teeth);
  const back = `l${-step} 2.5l${-step} -2.5`.repeat(teeth);
  return `M${x} ${y}${there}v${height}${back}Z`;
}

/** Rungs between the edges: several on purpose. */
function rungs({ x, y, width, height }: Box): string {
  let path = '';
  for (let down = 3; down < height - 1; down += 3) path += `M${x} ${y + down}h${width}`;
  return path;
}

/** Strokes across: present but not heard. */
function hatch({ x, y, width, height }: Box): string {
  let path = '';
  for (let from = 4 - height; from < width; from += 4) {
    const left = Math.max(0, from);
    const right = Math.min(width, from + height);
    path += `M${x + left} ${y + height - (left - from)}L${x + right} ${y + height - (right - from)}`;
  }
  return path;
}

/** A band as markup: its outline, and what its state draws inside. */
export function bandShape(state: TrackState, box: Box): string {
  const { x, y, width, height } = box;
  const rect = (name: string): string =>
    `<rect class="${name}" x="${x}" y="${y}" width="${width}" height="${height}"/>`;
  if (state === 'clash') return `<path class="band" d="${zigzag(box)}"/>`;
  if (state === 'empty') return rect('hollow');
  if (state === 'gang') return `${rect('band')}<path class="inside" d="${rungs(box)}"/>`;
  if (state === 'muted') return `${rect('band')}<path class="inside" d="${hatch(box)}"/>`;
  return rect('band');
}
