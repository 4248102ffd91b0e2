import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { installDebian } from '../../.ci/browser.mjs';

/** pdftotext and pdfinfo of poppler-utils, installed where that can be; otherwise says plainly how to get them. */
export function needPoppler(): void {
  if (hasPoppler()) return;
  installDebian(['poppler-utils']);
  if (!hasPoppler()) {
    throw new Error('pdftotext is missing: install poppler-utils (Debian, Ubuntu) or poppler (Homebrew)');
  }
}

function hasPoppler(): boolean {
  try {
    execFileSync('pdftotext', ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** Runs a tool on the PDF and returns what it prints. */
function printed(bytes: Uint8Array, run: (file: string) => readonly [string, ...string[]]): string {
  const folder = mkdtempSync(join(tmpdir(), 'report-'));
  try {
    const file = join(folder, 'report.pdf');
    writeFileSync(file, bytes);
    const [tool, ...rest] = run(file);
    return execFileSync(tool, rest, { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The text of every page, in the order it was set. */
export const pageTexts = (bytes: Uint8Array): string[] =>
  printed(bytes, (file) => ['pdftotext', '-raw', '-enc', 'UTF-8', file, '-'])
    .split('\f')
    .slice(0, -1);

export const pageCount = (bytes: Uint8Array): number =>
  Number(/^Pages:\s+(\d+)/m.exec(printed(bytes, (file) => ['pdfinfo', file]))![1]);

export const pageSize = (bytes: Uint8Array): string =>
  /^Page size:\s+(.+)$/m.exec(printed(bytes, (file) => ['pdfinfo', file]))![1]!;

/** Whether every font stands in the file itself. */
export const fontsEmbedded = (bytes: Uint8Array): boolean[] =>
  printed(bytes, (file) => ['pdffonts', file])
    .trim()
    .split('\n')
    .slice(2)
    .map((line) => /CID TrueType\s+Identity-H\s+yes\s/.test(line));
