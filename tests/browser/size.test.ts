import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { brotliBytes, firstLoadOf, packagesIn } from './first-load.ts';
import { DIST } from './harness-server.ts';

/** Ceilings in bytes after brotli. Raise one only in the commit that makes the app bigger. */
const CEILINGS = { 'scripts and styles of the first load': 64_000 };

/** What the first load must do without: each belongs to a screen that is opened later. */
const NEVER_FIRST = ['jspdf', 'jspdf-autotable', 'papaparse', 'fast-xml-parser', 'mimetext'];

describe('the first load', () => {
  const files = firstLoadOf(DIST);
  const packages = packagesIn(DIST);

  test('is found: a script, a style, and the view library in one of them', () => {
    expect(files.filter((file) => file.endsWith('.js')).length).toBeGreaterThan(0);
    expect(files.filter((file) => file.endsWith('.css')).length).toBeGreaterThan(0);
    expect(files.flatMap((file) => packages[file] ?? [])).toContain('preact');
  });

  test('stays under its ceiling', () => {
    const bytes = brotliBytes(DIST, files);
    console.log(`First load: ${bytes} bytes in ${files.length} files`);
    expect(bytes).toBeGreaterThan(1_000);
    expect(bytes).toBeLessThanOrEqual(CEILINGS['scripts and styles of the first load']);
  });

  test.each(NEVER_FIRST)('goes without %s', (name) => {
    const guilty = files.filter((file) => packages[file]?.includes(name));
    expect(guilty).toEqual([]);
  });

  // The label from which the sealing key is made stands in its room alone.
  test('goes without keys and sealing', () => {
    const holds = (file: string) => readFileSync(join(DIST, file), 'utf8').includes('sealing key');
    expect(files.filter(holds)).toEqual([]);
    const scripts = readdirSync(join(DIST, 'assets')).filter((name) => name.endsWith('.js'));
    expect(scripts.filter((name) => holds(join('assets', name))).length).toBeGreaterThan(0);
  });
});
