import { LONGEST_STROKES } from './strokes-text.ts';

/** Drawn with a finger: lines through points, from the upper left corner of a field `STROKES_WIDE` across. */
export type Stroke = readonly (readonly [x: number, y: number])[];

export const STROKES_WIDE = 1000;
export const STROKES_HIGH = 400;
/** Points closer than that are not told apart at the size they are printed. */
const STEP = 6;

const within = (value: number, most: number): number => Math.round(Math.min(most, Math.max(0, value)));

/** As text of at most `LONGEST_STROKES`; whole strokes at the end are left out if there is more. */
export function strokesText(strokes: readonly Stroke[]): string {
  let text = '';
  for (const stroke of strokes.map(thinned).filter((one) => one.length > 0)) {
    const next = text === '' ? strokeText(stroke) : `${text};${strokeText(stroke)}`;
    if (next.length > LONGEST_STROKES) return text;
    text = next;
  }
  return text;
}

function thinned(stroke: Stroke): Stroke {
  const kept: [number, number][] = [];
  for (const [at, [x, y]] of stroke.entries()) {
    const point: [number, number] = [within(x, STROKES_WIDE), within(y, STROKES_HIGH)];
    const last = kept.at(-1);
    const isFar = !last || Math.hypot(point[0] - last[0], point[1] - last[1]) >= STEP;
    if (isFar || (at === stroke.length - 1 && kept.length === 1)) kept.push(point);
  }
  return kept;
}

function strokeText(stroke: Stroke): string {
  let [left, top] = [0, 0];
  return stroke
    .map(([x, y]) => {
      const step = `${x - left},${y - top}`;
      [left, top] = [x, y];
      return step;
    })
    .join(' ');
}

export const strokesOf = (text: string): Stroke[] =>
  text
    .split(';')
    .filter((stroke) => stroke !== '')
    .map((stroke) => {
      let [x, y] = [0, 0];
      return stroke.split(' ').map((step): [number, number] => {
        const [across = 0, down = 0] = step.split(',').map(Number);
        x += across;
        y += down;
        return [x, y];
      });
    });

/** The strokes as one path of SVG; a dot is a line of no length, which a round end makes visible. */
export const strokesPath = (strokes: readonly Stroke[]): string =>
  strokes
    .map(
      ([first, ...rest]) =>
        `M${first?.join(' ')}${(rest.length > 0 ? rest : [first]).map((point) => `L${point?.join(' ')}`).join('')}`,
    )
    .join('');
