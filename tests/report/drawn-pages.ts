import { inflateSync } from 'node:zlib';
import { INKS } from '../../src/report/pdf/paper.ts';

/** What is drawn on the pages of a PDF, a mark a line, in the order drawn; places in points from the upper left corner. */
export function drawnPages(bytes: Uint8Array): string {
  const objects = objectsOf(bytes);
  const fonts = fontsOf(objects);
  return [...objects.values()]
    .filter(({ head }) => head.includes('/Type /Page\n'))
    .map((page, at) => {
      const [, , width, height] = /MediaBox \[([^\]]+)\]/.exec(page.head)![1]!.split(' ').map(Number);
      const content = objects.get(/\/Contents (\d+) 0 R/.exec(page.head)![1]!)!;
      const marks = marksIn(content.stream, height!, fonts);
      return [`page ${at + 1} of ${round(width!)} × ${round(height!)}`, ...marks, ''].join('\n');
    })
    .join('\n');
}

interface PdfObject {
  readonly head: string;
  readonly stream: string;
}

/** The objects of the file by their numbers (ISO 32000-1, 7.3.10), streams inflated. */
function objectsOf(bytes: Uint8Array): Map<string, PdfObject> {
  const text = Buffer.from(bytes).toString('latin1');
  return new Map(
    [...text.matchAll(/(\d+) 0 obj\n([\s\S]*?)endobj/g)].map(([, number, body]) => {
      const [head = '', packed] = body!.split(/stream\n|\nendstream/);
      const stream =
        packed && head.includes('/FlateDecode') ? inflateSync(Buffer.from(packed, 'latin1')) : '';
      return [number!, { head, stream: stream.toString('latin1') }];
    }),
  );
}

interface Font {
  readonly isBold: boolean;
  readonly letters: ReadonlyMap<string, string>;
}

/** The fonts by the names that pages call them, and which letter each of their glyphs is (9.10.3, ToUnicode). */
function fontsOf(objects: ReadonlyMap<string, PdfObject>): Map<string, Font> {
  const named = [...objects.values()].flatMap(({ head }) => [...head.matchAll(/\/(F\d+) (\d+) 0 R/g)]);
  return new Map(
    named.map(([, name, number], at) => {
      const map = /\/ToUnicode (\d+) 0 R/.exec(objects.get(number!)!.head)![1]!;
      const pairs = objects.get(map)!.stream.matchAll(/<([0-9a-f]{4})><([0-9a-f]+)>/g);
      const letters = new Map([...pairs].map(([, glyph, code]) => [glyph!, letterOf(code!)]));
      return [name!, { isBold: at === 1, letters }];
    }),
  );
}

const letterOf = (hex: string): string => Buffer.from(hex, 'hex').swap16().toString('utf16le');

const round = (points: number): number => Math.round(points * 10) / 10;

/** Follows the operators of a page (ISO 32000-1, annex A), as far as a report uses them. */
function marksIn(stream: string, height: number, fonts: ReadonlyMap<string, Font>): string[] {
  const marks: string[] = [];
  let [font, size, width, place] = ['', 0, 0, ''];
  let [fill, stroke]: (readonly number[])[] = [[], []];
  let path: string[] = [];
  const at = (x: string, y: string): string => `${round(Number(x))},${round(height - Number(y))}`;
  for (const line of stream.split('\n')) {
    const words = line.trim().split(' ');
    const operator = words.pop();
    if (operator === 'Tf') [font, size] = [words[0]!.slice(1), Number(words[1])];
    if (operator === 'Td') place = at(words[0]!, words[1]!);
    if (operator === 'rg' || operator === 'g') fill = inkOf(words);
    if (operator === 'RG' || operator === 'G') stroke = inkOf(words);
    if (operator === 'w') width = round(Number(words[0]) * 10) / 10;
    if (operator === 'm') path = [at(words[0]!, words[1]!)];
    if (operator === 'l') path.push(at(words[0]!, words[1]!));
    if (operator === 'c') path.push(`curve ${at(words[4]!, words[5]!)}`);
    if (operator === 're') {
      const [x, y, across, up] = words.map(Number);
      path = [`${at(`${x}`, `${y}`)} ${round(across!)} × ${round(-up!)}`];
    }
    if (operator === 'Tj') {
      const { letters, isBold } = fonts.get(font)!;
      const text = words[0]!.match(/[0-9a-f]{4}/g)!.map((glyph) => letters.get(glyph)!);
      marks.push(`${place} ${round(size)}${isBold ? ' bold' : ''}${nameOf(fill!)}: ${text.join('')}`);
    }
    if (operator === 'S') marks.push(`line ${width}${nameOf(stroke!)}: ${path.join(' ')}`);
    if (operator === 'f') marks.push(`fill${nameOf(fill!)}: ${path.join(' ')}`);
  }
  return marks;
}

const inkOf = (words: readonly string[]): readonly number[] =>
  (words.length === 1 ? [words[0], words[0], words[0]] : words).map((part) => Number(part) * 255);

/** The ink it is by name, nothing for plain ink; a page has two or three digits of it. */
function nameOf(ink: readonly number[]): string {
  const [name] =
    Object.entries(INKS).find(([, parts]) => parts.every((part, at) => Math.abs(part - ink[at]!) < 3)) ?? [];
  return name === 'ink' ? '' : ` ${name ?? ink.map(Math.round).join('-')}`;
}
