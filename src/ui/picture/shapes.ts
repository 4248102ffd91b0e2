import { BAND } from './measures.ts';

// The marks of a track's state, laid on their side: readable on paper and without colour.

/** Zigzag on both long edges: not intended. */
export function zigzag(x: number, y: number, width: number): string {
  const teeth = Math.max(2, Math.round(width / 9));
  const step = width / teeth / 2;
  const there = Array.from({ length: teeth }, () => `l${step} -5l${step} 5`).join('');
  const back = Array.from({ length: teeth }, () => `l${-step} 5l${-step} -5`).join('');
  return `M${x} ${y}${there}V${y + BAND}${back}Z`;
}

/** Rungs between the edges: several on purpose. */
export const rungs = (x: number, y: number, width: number): string =>
  [6, 12, 18, 24].map((down) => `M${x} ${y + down}h${width}`).join('');

/** Strokes across: present but not heard. */
export function hatch(x: number, y: number, width: number): string {
  const lines: string[] = [];
  for (let from = 9 - BAND; from < width; from += 9) {
    const left = Math.max(0, from);
    const right = Math.min(width, from + BAND);
    lines.push(`M${x + left} ${y + BAND - (left - from)}L${x + right} ${y + BAND - (right - from)}`);
  }
  return lines.join('');
}
