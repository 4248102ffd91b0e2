import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Where a word is on a page, in points from the upper left corner. */
export interface Word {
  readonly text: string;
  readonly page: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What poppler reads and draws of a PDF: every word with its place, and the dots of a page. */
export function readPages<T>(bytes: Uint8Array, read: (pages: PagesRead) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'pages-'));
  try {
    const file = join(folder, 'report.pdf');
    writeFileSync(file, bytes);
    const text = execFileSync('pdftotext', [file, '-'], { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 });
    return read({ text, words: wordsIn(file), darkIn: (word) => darkIn(file, join(folder, 'page'), word) });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

interface PagesRead {
  /** All of it in reading order. */
  readonly text: string;
  readonly words: readonly Word[];
  /** The dots where a word is, a character each: dark or not. */
  darkIn(word: Word): string;
}

const MARK = /<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*)<\/word>/g;
const NAMED: Record<string, string> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'" };

function wordsIn(file: string): Word[] {
  const markup = execFileSync('pdftotext', ['-bbox', file, '-'], {
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return markup
    .split('<page ')
    .slice(1)
    .flatMap((page, at) =>
      [...page.matchAll(MARK)].map(([, left, top, right, bottom, text]) => ({
        text: text!.replaceAll(/&[#\w]+;/g, (name) => NAMED[name] ?? name),
        page: at + 1,
        ...{ left: Number(left), top: Number(top), right: Number(right), bottom: Number(bottom) },
      })),
    );
}

const RESOLUTION = 144;

function darkIn(file: string, name: string, { page, left, top, right, bottom }: Word): string {
  const place = [left, top, right - left, bottom - top].map((points) =>
    Math.round((points * RESOLUTION) / 72),
  );
  const [x, y, across, down] = place.map(String) as [string, string, string, string];
  execFileSync('pdftoppm', [
    ...['-gray', '-singlefile', '-r', `${RESOLUTION}`, '-f', `${page}`, '-l', `${page}`],
    ...['-x', x, '-y', y, '-W', across, '-H', down, file, name],
  ]);
  const image = readFileSync(`${name}.pgm`);
  const dots = image.subarray(image.length - Number(across) * Number(down));
  return Array.from(dots, (dot) => (dot < 128 ? '#' : '.')).join('');
}
