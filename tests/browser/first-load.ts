import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';

/** The scripts and styles that the built index.html names, and all that those import before they run. */
export function firstLoadOf(folder: string): readonly string[] {
  const read = (path: string): string => readFileSync(join(folder, path), 'utf8');
  const tags = read('index.html').matchAll(/<(?:script|link)\b[^>]*?(?:src|href)="\/([^"]+\.(?:js|css))"/g);
  const files = new Set([...tags].map((match) => match[1]!));
  for (const file of files) {
    if (!file.endsWith('.js')) continue;
    // Static imports only: `import(` is what the first load does not wait for.
    for (const [, name] of read(file).matchAll(/(?:\bfrom|\bimport)\s*["']\.\/([\w.-]+\.js)["']/g)) {
      files.add(`assets/${name}`);
    }
  }
  return [...files];
}

/** Bytes of these files after brotli, each by itself as a server sends them. */
export const brotliBytes = (folder: string, files: readonly string[]): number =>
  files.reduce((sum, file) => sum + brotliCompressSync(readFileSync(join(folder, file))).length, 0);

/** Which packages each script of the build was made of. */
export const packagesIn = (folder: string): Record<string, readonly string[]> =>
  JSON.parse(readFileSync(join(folder, '.packages.json'), 'utf8'));
