// The marks of a track's state, laid on their side: readable on paper and without colour.

const TOOTH = 4;

/** Zigzag on both long edges: not intended. */
export function zigzag(x: number, y: number, width: number, height: number): string {
  const teeth = Math.max(2, Math.round(width / 9));
  const step = width / teeth / 2;
  const there = Array.from({ length: teeth }, () => `l${step} -${TOOTH}l${step} ${TOOTH}`).join('');
  const back = Array.from({ length: teeth }, () => `l${-step} ${TOOTH}l${-step} -${TOOTH}`).join('');
  return `M${x} ${y}${there}V${y + height}${back}Z`;
}

/** Rungs between the edges: several on purpose. */
export const rungs = (x: number, y: number, width: number, height: number): string =>
  [1, 2, 3, 4].map((rung) => `M${x} ${y + (height * rung) / 5}h${width}`).join('');

/** Strokes across: present but not heard. */
export function hatch(x: number, y: number, width: number, height: number): string {
  const lines: string[] = [];
  for (let from = 9 - height; from < width; from += 9) {
    const left = Math.max(0, from);
    const right = Math.min(width, from + height);
    lines.push(`M${x + left} ${y + height - (left - from)}L${x + right} ${y + height - (right - from)}`);
  }
  return lines.join('');
}
