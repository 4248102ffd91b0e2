import type { jsPDF } from 'jspdf';
import type { Run, RunPicture } from './letters.ts';
import { fromLeft } from './pieces.ts';

/** What the writer of pages gives those who add objects of their own, as its images do. */
interface Inside {
  readonly events: { subscribe(event: string, then: () => void): void };
  readonly newObject: () => number;
  readonly out: (text: string) => void;
  readonly putStream: (stream: {
    data: string;
    objectId: number;
    additionalKeyValues?: { key: string; value: string }[];
  }) => void;
  readonly write: (text: string) => void;
}

interface Picture {
  readonly run: Run;
  readonly advance: number;
  readonly picture: RunPicture;
}

const UNITS = 1000;
/** One less than there are: the last is for the measure. */
const CODES = 254;
/** Readers of such fonts tell their size, and so what is a space, by an m, which is as wide as in most fonts. */
const MEASURE = { name: '/m', width: '600' };

/**
 * Runs as pictures that are text: each has a font of its own (ISO 32000-1, 9.6.5, Type 3), whose first letter draws
 * the picture and whose others are blank. So a search finds them, and copying gives the letters.
 */
export class PictureFonts {
  readonly #inside: Inside;
  readonly #pictures: Picture[] = [];
  #forms: number[] = [];

  constructor(doc: jsPDF) {
    this.#inside = doc.internal as unknown as Inside;
  }

  /** The number by which pages call it. */
  add(run: Run, advance: number, picture: RunPicture): number {
    if (this.#pictures.length === 0) {
      const { events } = this.#inside;
      events.subscribe('putResources', () => {
        this.#forms = this.#pictures.map((one) => this.#putForm(one));
      });
      events.subscribe('putXobjectDict', () => {
        for (const [at, form] of this.#forms.entries()) this.#inside.out(`/T${at} ${form} 0 R`);
      });
    }
    return this.#pictures.push({ run, advance, picture }) - 1;
  }

  /** `y` upwards from the foot of the page. */
  draw(number: number, x: number, y: number, size: number, ink: readonly number[]): void {
    const colour = ink.map((part) => figure(part / 255)).join(' ');
    this.#inside.write(
      `q ${colour} rg ${figure(size)} 0 0 ${figure(size)} ${figure(x)} ${figure(y)} cm /T${number} Do Q`,
    );
  }

  #putForm(one: Picture): number {
    const { letters, codes } = coded(one.run);
    const font = this.#putFont(one, letters);
    return this.#putStream(`BT /F 1 Tf <${codes}> Tj ET`, {
      Type: '/XObject',
      Subtype: '/Form',
      BBox: `[-1 -2 ${figure(one.advance + 1)} 3]`,
      Resources: `<< /Font << /F ${font} 0 R >> >>`,
    });
  }

  #putFont({ advance, picture }: Picture, letters: readonly string[]): number {
    const width = figure((advance * UNITS) / letters.length);
    const { left, bottom, width: across, height: up } = picture;
    const box = [left, bottom, left + across, bottom + up].map((ems) => figure(ems * UNITS)).join(' ');
    const image = this.#putImage(picture);
    const frame = `${figure(across * UNITS)} 0 0 ${figure(up * UNITS)} ${figure(left * UNITS)} ${figure(bottom * UNITS)}`;
    // A stencil takes the colour of the text, a coloured picture its own.
    const start = 'stencil' in picture.dots ? `${width} 0 ${box} d1` : `${width} 0 d0`;
    const first = this.#putStream(`${start} q ${frame} cm /I Do Q`);
    const blank = this.#putStream(`${width} 0 0 0 0 0 d1`);
    const map = this.#putStream(unicodeMap(letters));
    const names = [...letters.map((_, at) => (at === 0 ? '/first' : '/blank')), MEASURE.name];
    const widths = [...letters.map(() => width), MEASURE.width];
    return this.#putDictionary({
      Type: '/Font',
      Subtype: '/Type3',
      FontBBox: `[${box}]`,
      FontMatrix: `[${1 / UNITS} 0 0 ${1 / UNITS} 0 0]`,
      FirstChar: '1',
      LastChar: `${names.length}`,
      Widths: `[${widths.join(' ')}]`,
      Encoding: `<< /Type /Encoding /Differences [1 ${names.join(' ')}] >>`,
      CharProcs: `<< /first ${first} 0 R /blank ${blank} 0 R ${MEASURE.name} ${blank} 0 R >>`,
      Resources: `<< /XObject << /I ${image} 0 R >> >>`,
      ToUnicode: `${map} 0 R`,
    });
  }

  #putImage({ columns, rows, dots }: RunPicture): number {
    const image = { Type: '/XObject', Subtype: '/Image', Width: `${columns}`, Height: `${rows}` };
    if ('stencil' in dots) {
      const keys = { ...image, ImageMask: 'true', BitsPerComponent: '1', Decode: '[1 0]' };
      return this.#putStream(binaryText(dots.stencil), keys);
    }
    const opacity = this.#putStream(binaryText(dots.opacity), {
      ...image,
      ColorSpace: '/DeviceGray',
      BitsPerComponent: '8',
    });
    return this.#putStream(binaryText(dots.colours), {
      ...image,
      ColorSpace: '/DeviceRGB',
      BitsPerComponent: '8',
      SMask: `${opacity} 0 R`,
    });
  }

  #putStream(data: string, keys: Readonly<Record<string, string>> = {}): number {
    const objectId = this.#inside.newObject();
    const additionalKeyValues = Object.entries(keys).map(([key, value]) => ({ key, value }));
    this.#inside.putStream({ data, objectId, additionalKeyValues });
    this.#inside.out('endobj');
    return objectId;
  }

  #putDictionary(keys: Readonly<Record<string, string>>): number {
    const objectId = this.#inside.newObject();
    const pairs = Object.entries(keys).map(([key, value]) => `/${key} ${value}`);
    this.#inside.out(`<<\n${pairs.join('\n')}\n>>\nendobj`);
    return objectId;
  }
}

/** What each code of the font stands for, and the run in codes. A longer run has several letters a code. */
function coded(run: Run): { readonly letters: readonly string[]; readonly codes: string } {
  const characters = fromLeft(run);
  const each = Math.ceil(characters.length / CODES);
  const letters: string[] = [];
  for (let at = 0; at < characters.length; at += each) letters.push(characters.slice(at, at + each).join(''));
  return { letters, codes: letters.map((_, at) => hex(at + 1, 2)).join('') };
}

const hex = (number: number, digits: number): string => number.toString(16).padStart(digits, '0');
const figure = (number: number): string => String(Math.round(number * 1e4) / 1e4);

/** Which letters the codes are (ISO 32000-1, 9.10.3). */
function unicodeMap(letters: readonly string[]): string {
  const lines = letters.map((letter, at) => {
    const units = Array.from({ length: letter.length }, (_, unit) => hex(letter.charCodeAt(unit), 4));
    return `<${hex(at + 1, 2)}> <${units.join('')}>`;
  });
  // No more than a hundred to a list (Adobe Technical Note 5014).
  const lists: string[] = [];
  for (let at = 0; at < lines.length; at += 100) {
    const some = lines.slice(at, at + 100);
    lists.push(`${some.length} beginbfchar\n${some.join('\n')}\nendbfchar`);
  }
  return `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<00> <ff>
endcodespacerange
${lists.join('\n')}
endcmap
CMapName currentdict /CMap defineresource pop
end
end`;
}

export function binaryText(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += 8192) {
    text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  }
  return text;
}
