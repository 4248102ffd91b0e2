import type { Run, RunPicture, SystemLetters } from '../../../report/pdf/letters.ts';
import type { Weight } from '../../../report/pdf/paper.ts';

/** Dots an em: 800 to the inch at the size of most text on a page. */
const EM = 96;
const EDGE = 2;
const WEIGHTS: Record<Weight, string> = { regular: '400', bold: '700' };

/** No font has these: nothing is assigned to them, in a plane that is empty. One of four digits, one of five. */
const UNASSIGNED = ['\u0378', '\u{40001}'];

/** The letters of this phone, for pages that are made off the screen; undefined where nothing can be drawn there. */
export function systemLetters(): SystemLetters | undefined {
  const rule = contextOf(1, 1);
  if (!rule) return undefined;
  setFont(rule, 'regular', false);
  const missing = new Set(UNASSIGNED.map((one) => shapeOf(rule, one)));
  const known = new Map<string, boolean>();
  return {
    has(character) {
      const before = known.get(character);
      if (before !== undefined) return before;
      setFont(rule, 'regular', false);
      const has = !missing.has(shapeOf(rule, character));
      known.set(character, has);
      return has;
    },
    advance: (run) => measured(rule, run).width / EM,
    picture: (run) => pictureOf(measured(rule, run), run),
  };
}

type Context = OffscreenCanvasRenderingContext2D;

function contextOf(width: number, height: number): Context | null {
  if (typeof OffscreenCanvas === 'undefined') return null;
  return new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
}

function setFont(context: Context, weight: Weight, isRightToLeft: boolean): void {
  context.font = [WEIGHTS[weight], `${EM}px`, 'sans-serif'].join(' ');
  context.direction = isRightToLeft ? 'rtl' : 'ltr';
  context.textAlign = 'left';
  context.textBaseline = 'alphabetic';
}

/**
 * How far a character goes and the box around it. A browser draws what no font has as a box, the same for all or with the
 * number in it, and then as large for each: what fills exactly such a box is one.
 */
function shapeOf(context: Context, character: string): string {
  const { width, actualBoundingBoxLeft, actualBoundingBoxRight, actualBoundingBoxAscent } =
    context.measureText(character);
  return [width, actualBoundingBoxLeft, actualBoundingBoxRight, actualBoundingBoxAscent].join(' ');
}

function measured(context: Context, { text, weight, isRightToLeft }: Run): TextMetrics {
  setFont(context, weight, isRightToLeft);
  return context.measureText(text);
}

function pictureOf(metrics: TextMetrics, { text, weight, isRightToLeft }: Run): RunPicture {
  const left = Math.floor(-metrics.actualBoundingBoxLeft) - EDGE;
  const top = Math.ceil(metrics.actualBoundingBoxAscent) + EDGE;
  const columns = Math.max(1, Math.ceil(metrics.actualBoundingBoxRight) + EDGE - left);
  const rows = Math.max(1, top + Math.ceil(metrics.actualBoundingBoxDescent) + EDGE);
  const context = contextOf(columns, rows);
  if (!context) throw new Error('No picture of letters can be drawn on this phone');
  setFont(context, weight, isRightToLeft);
  context.fillText(text, -left, top);
  const place = { left: left / EM, bottom: (top - rows) / EM, width: columns / EM, height: rows / EM };
  return { ...place, columns, rows, dots: dotsOf(context.getImageData(0, 0, columns, rows)) };
}

/** Letters take the ink of the text, so the picture says only where they are; pictures among them keep their colours. */
function dotsOf({ data, width, height }: ImageData): RunPicture['dots'] {
  return isColoured(data) ? coloursIn(data) : { stencil: stencilOf(data, width, height) };
}

const OPAQUE = 128;

function isColoured(data: Uint8ClampedArray): boolean {
  for (let at = 0; at < data.length; at += 4) {
    if (data[at + 3]! > OPAQUE && Math.max(data[at]!, data[at + 1]!, data[at + 2]!) > 32) return true;
  }
  return false;
}

function coloursIn(data: Uint8ClampedArray): RunPicture['dots'] {
  const colours = new Uint8Array((data.length / 4) * 3);
  const opacity = new Uint8Array(data.length / 4);
  for (let dot = 0; dot < opacity.length; dot += 1) {
    colours.set(data.subarray(dot * 4, dot * 4 + 3), dot * 3);
    opacity[dot] = data[dot * 4 + 3]!;
  }
  return { colours, opacity };
}

function stencilOf(data: Uint8ClampedArray, width: number, height: number): Uint8Array {
  const across = Math.ceil(width / 8);
  const stencil = new Uint8Array(across * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      if (data[(y * width + x) * 4 + 3]! >= OPAQUE) stencil[y * across + (x >> 3)]! |= 0x80 >> (x & 7);
    }
  }
  return stencil;
}
