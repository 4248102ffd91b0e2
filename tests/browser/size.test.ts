import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { DIST } from './harness-server.ts';

/** Ceilings in bytes after brotli. Raise one only in the commit that makes the app bigger. */
const CEILINGS = { 'scripts and styles of the first load': 45_000 };

/** What the first load must do without: each belongs to a screen that is opened later. */
const NEVER_FIRST = [
  'jspdf',
  'jspdf-autotable',
  'papaparse',
  'fast-xml-parser',
  'mimetext',
  'workbox-window',
];

const read = (path: string): string => readFileSync(join(DIST, path), 'utf8');

/** The scripts and styles that index.html names, and all that those import before they run. */
function firstLoad(): readonly string[] {
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

describe('the first load', () => {
  const files = firstLoad();
  const packages: Record<string, readonly string[]> = JSON.parse(read('.packages.json'));

  test('is found: a script, a style, and the view library in one of them', () => {
    expect(files.filter((file) => file.endsWith('.js')).length).toBeGreaterThan(0);
    expect(files.filter((file) => file.endsWith('.css')).length).toBeGreaterThan(0);
    expect(files.flatMap((file) => packages[file] ?? [])).toContain('preact');
  });

  test('stays under its ceiling', () => {
    const bytes = files.reduce(
      (sum, file) => sum + brotliCompressSync(readFileSync(join(DIST, file))).length,
      0,
    );
    console.log(`First load: ${bytes} bytes in ${files.length} files`);
    expect(bytes).toBeGreaterThan(1_000);
    expect(bytes).toBeLessThanOrEqual(CEILINGS['scripts and styles of the first load']);
  });

  test.each(NEVER_FIRST)('goes without %s', (name) => {
    const guilty = files.filter((file) => packages[file]?.includes(name));
    expect(guilty).toEqual([]);
  });
});
