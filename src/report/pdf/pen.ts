import { jsPDF } from 'jspdf';
import type { Run, SystemLetters } from './letters.ts';
import { INKS, type Ink, type Paper, type Style, type Weight } from './paper.ts';
import { binaryText, PictureFonts } from './picture-fonts.ts';
import { clustersOf, isUndrawn, MISSING, type Piece, piecesOf } from './pieces.ts';

/** The report's two fonts as TrueType bytes; the caller loads them, since this room reads no files. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

const FACE = 'Report';

/** What the fonts can draw, and how wide. */
interface Metrics {
  readonly codeMap: Readonly<Record<number, number>>;
  readonly widthOf: (glyph: number) => number;
}

/** A run that was measured, and its number once it was drawn. */
interface MeasuredRun {
  readonly run: Run;
  /** In ems. */
  readonly advance: number;
  number: number | undefined;
}

/**
 * Draws on the pages of one document. What its fonts lack is drawn by the letters of the system, if given; what those
 * lack too becomes `?` and is collected in `missing`.
 */
export class Pen {
  readonly paper: Paper;
  readonly missing = new Set<string>();
  readonly #doc: jsPDF;
  readonly #metrics: Readonly<Record<Weight, Metrics>>;
  readonly #widths: Record<Weight, Map<string, number>> = { regular: new Map(), bold: new Map() };
  readonly #letters: SystemLetters | undefined;
  readonly #pictures: PictureFonts;
  readonly #runs: Record<Weight, Map<string, MeasuredRun>> = { regular: new Map(), bold: new Map() };
  readonly #pieces = new Map<string, readonly Piece[] | null>();
  #style: Style | undefined;

  constructor(paper: Paper, fonts: Fonts, letters?: SystemLetters) {
    this.paper = paper;
    this.#letters = letters;
    this.#doc = new jsPDF({
      unit: 'pt',
      format: [paper.width, paper.height],
      compress: true,
      putOnlyUsedFonts: true,
    });
    this.#pictures = new PictureFonts(this.#doc);
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

  /** Whether the pages' own fonts have the character. */
  #has(character: string): boolean {
    return Boolean(this.#metrics.regular.codeMap[character.codePointAt(0)!]);
  }

  /** The text as these fonts can draw it. */
  #drawable(text: string): string {
    let drawn = '';
    for (const character of text.normalize('NFC')) {
      if (this.#has(character)) drawn += character;
      else if (!isUndrawn(character)) {
        this.missing.add(character);
        drawn += MISSING;
      }
    }
    return drawn;
  }

  /** Finds what of the text nothing here can draw: it is then in `missing`. */
  findMissing(text: string): void {
    for (const character of text) {
      if (!this.#letters?.has(character)) this.#drawable(character);
    }
  }

  /** The text by who draws it; null if the pages' own fonts draw all of it. */
  #piecesOf(text: string): readonly Piece[] | null {
    const letters = this.#letters;
    if (!letters) return null;
    const known = this.#pieces.get(text);
    if (known !== undefined) return known;
    const pieces = piecesOf(text.normalize('NFC'), {
      page: (character) => this.#has(character),
      system: (character) => letters.has(character),
    });
    const found = pieces.every(({ by }) => by === 'page') ? null : pieces;
    this.#pieces.set(text, found);
    return found;
  }

  /** Letters with their marks, which stay together where a line breaks. */
  lettersOf(text: string): readonly string[] {
    return this.#letters ? clustersOf(text) : [...text];
  }

  /** Width in points. */
  width(text: string, style: Style): number {
    const pieces = this.#piecesOf(text);
    if (!pieces) return this.#ownWidth(text, style);
    return pieces.reduce((sum, piece) => sum + this.#pieceWidth(piece, style), 0);
  }

  #pieceWidth(piece: Piece, style: Style): number {
    return piece.by === 'page'
      ? this.#ownWidth(piece.text, style)
      : this.#run(piece, style.weight).advance * style.size;
  }

  #run({ text, isRightToLeft }: Piece, weight: Weight): MeasuredRun {
    const key = `${isRightToLeft} ${text}`;
    const known = this.#runs[weight].get(key);
    if (known) return known;
    const run = { text, weight, isRightToLeft };
    const measured = { run, advance: this.#letters!.advance(run), number: undefined };
    this.#runs[weight].set(key, measured);
    return measured;
  }

  #ownWidth(text: string, style: Style): number {
    const widths = this.#widths[style.weight];
    const { codeMap, widthOf } = this.#metrics[style.weight];
    let units = 0;
    for (const character of this.#drawable(text)) {
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
    const back = align === 'left' ? 0 : this.width(text, style) / (align === 'middle' ? 2 : 1);
    const pieces = this.#piecesOf(text);
    if (!pieces) {
      this.#ownText(text, x - back, y, style);
      return;
    }
    let at = x - back;
    for (const piece of pieces) {
      if (piece.by === 'page') this.#ownText(piece.text, at, y, style);
      else this.#picture(piece, at, y, style);
      at += this.#pieceWidth(piece, style);
    }
  }

  #ownText(text: string, x: number, y: number, style: Style): void {
    const drawn = this.#drawable(text);
    if (drawn.trim() === '') return;
    this.#use(style);
    this.#doc.text(drawn, x, y);
  }

  #picture(piece: Piece, x: number, y: number, { size, weight, ink }: Style): void {
    const run = this.#run(piece, weight);
    run.number ??= this.#pictures.add(run.run, run.advance, this.#letters!.picture(run.run));
    this.#pictures.draw(run.number, x, this.paper.height - y, size, INKS[ink]);
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
