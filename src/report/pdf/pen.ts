import { jsPDF } from 'jspdf';
import { INKS, type Ink, type Paper, type Style, type Weight } from './paper.ts';

/** The report's two fonts as TrueType bytes; the caller loads them, since this room reads no files. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

const FACE = 'Report';

/** Replaces letters that the font lacks. */
const MISSING = '?';

/** What the fonts can draw, and how wide. */
interface Metrics {
  readonly codeMap: Readonly<Record<number, number>>;
  readonly widthOf: (glyph: number) => number;
}

/** Draws on the pages of one document. Letters the fonts lack become `?` and are collected in `missing`. */
export class Pen {
  readonly paper: Paper;
  readonly missing = new Set<string>();
  readonly #doc: jsPDF;
  readonly #metrics: Readonly<Record<Weight, Metrics>>;
  readonly #widths: Record<Weight, Map<string, number>> = { regular: new Map(), bold: new Map() };
  #style: Style | undefined;

  constructor(paper: Paper, fonts: Fonts) {
    this.paper = paper;
    this.#doc = new jsPDF({
      unit: 'pt',
      format: [paper.width, paper.height],
      compress: true,
      putOnlyUsedFonts: true,
    });
    this.#metrics = { regular: this.#load('regular', fonts.regular), bold: this.#load('bold', fonts.bold) };
  }

  #load(weight: Weight, bytes: Uint8Array): Metrics {
    if (!isTrueType(bytes)) throw new Error(`The ${weight} face of the report is not a TrueType font`);
    const style = weight === 'bold' ? 'bold' : 'normal';
    this.#doc.addFileToVFS(`${weight}.ttf`, binaryText(bytes));
    this.#doc.addFont(`${weight}.ttf`, FACE, style);
    const { metadata } = this.#doc.setFont(FACE, style).getFont();
    return {
      codeMap: metadata.cmap.unicode.codeMap,
      widthOf: (glyph) => metadata.widthOfGlyph(glyph),
    };
  }

  /** The text as these fonts can draw it. */
  drawable(text: string): string {
    let drawn = '';
    for (const character of text.normalize('NFC')) {
      if (this.#metrics.regular.codeMap[character.codePointAt(0)!]) drawn += character;
      else if (!/\p{Cf}|\p{Variation_Selector}/u.test(character)) {
        this.missing.add(character);
        drawn += MISSING;
      }
    }
    return drawn;
  }

  /** Width in points. */
  width(text: string, style: Style): number {
    const widths = this.#widths[style.weight];
    const { codeMap, widthOf } = this.#metrics[style.weight];
    let units = 0;
    for (const character of this.drawable(text)) {
      let width = widths.get(character);
      if (width === undefined) {
        width = widthOf(codeMap[character.codePointAt(0)!] ?? 0);
        widths.set(character, width);
      }
      units += width;
    }
    return (units * style.size) / 1000;
  }

  /** Sets text on the baseline `y`; `x` is its left edge, its middle or its right edge. */
  text(text: string, x: number, y: number, style: Style, align: 'left' | 'middle' | 'right' = 'left'): void {
    const drawn = this.drawable(text);
    if (drawn.trim() === '') return;
    this.#use(style);
    const back = align === 'left' ? 0 : this.width(drawn, style) / (align === 'middle' ? 2 : 1);
    this.#doc.text(drawn, x - back, y);
  }

  #use(style: Style): void {
    if (this.#style === style) return;
    this.#doc.setFont(FACE, style.weight === 'bold' ? 'bold' : 'normal');
    this.#doc.setFontSize(style.size);
    this.#doc.setTextColor(...INKS[style.ink]);
    this.#style = style;
  }

  line(x1: number, y1: number, x2: number, y2: number, ink: Ink = 'line', width = 0.4): void {
    this.#doc.setDrawColor(...INKS[ink]);
    this.#doc.setLineWidth(width);
    this.#doc.line(x1, y1, x2, y2);
  }

  /** A line through points, each given relative to the one before. */
  steps(x: number, y: number, steps: [number, number][], ink: Ink = 'ink', width = 0.7): void {
    this.#doc.setDrawColor(...INKS[ink]);
    this.#doc.setLineWidth(width);
    this.#doc.lines(steps, x, y, [1, 1], 'S', false);
  }

  fill(x: number, y: number, width: number, height: number, ink: Ink): void {
    this.#doc.setFillColor(...INKS[ink]);
    this.#doc.rect(x, y, width, height, 'F');
  }

  oval(x: number, y: number, across: number, down: number, width = 0.9): void {
    this.#doc.setDrawColor(...INKS.ink);
    this.#doc.setLineWidth(width);
    this.#doc.ellipse(x, y, across, down, 'S');
  }

  get pages(): number {
    return this.#doc.getNumberOfPages();
  }

  addPage(): void {
    this.#doc.addPage([this.paper.width, this.paper.height]);
    this.#style = undefined;
  }

  turnTo(page: number): void {
    this.#doc.setPage(page);
    this.#style = undefined;
  }

  /**
   * The document's bytes: the same for the same drawing, `id` (32 hex digits) and `date` (`'2026-10-07'`).
   */
  bytes(title: string, id: string, date: string): Uint8Array<ArrayBuffer> {
    this.#doc.setDocumentProperties({ title, creator: 'Rollbook' });
    this.#doc.setFileId(id);
    // The writer takes dates of 1970 to 2037.
    const day = /^(19[7-9]\d|20[0-2]\d|203[0-7])-(0\d|1[0-2])-([0-2]\d|3[01])$/.test(date)
      ? date
      : '2000-01-01';
    this.#doc.setCreationDate(`D:${day.replaceAll('-', '')}000000+00'00'`);
    return new Uint8Array(this.#doc.output('arraybuffer'));
  }
}

/** The tag that TrueType outlines begin with (OpenType 1.9, sfntVersion). */
const isTrueType = (bytes: Uint8Array): boolean => [0, 1, 0, 0].every((byte, at) => bytes[at] === byte);

function binaryText(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 8192) {
    text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  }
  return text;
}
