import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { listKeptFiles } from '../.ci/kept-files.mjs';

let folder: string;
const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);
const worker = (): string => readFileSync(join(folder, 'sw.js'), 'utf8');
/** What the worker would have at hand, and what it would hand to the library. */
function run(): { self: { keptFiles?: unknown }; given: unknown } {
  const self: { keptFiles?: unknown } = {};
  const given: unknown[] = [];
  new Function('self', 's', worker())(self, { precacheAndRoute: (files: unknown) => given.push(files) });
  return { self, given: given[0] };
}
const check = (text: string): string => createHash('sha256').update(text).digest('base64');

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rollbook-kept-'));
  write('index.html', '<script src="/first.js"></script><a href="/later.js.html"></a>');
  write('first.js', 'first');
  write('later.js', 'later');
  write(
    'sw.js',
    's.precacheAndRoute([{url:"later.js",revision:null},{url:"first.js",revision:"b2"},{url:"index.html",revision:"a1"}],{});',
  );
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('the list of files that the worker keeps', () => {
  test('is the one that the library is given, with a check of each file, and what it starts with first', () => {
    listKeptFiles(folder);
    const { self, given } = run();
    expect(given).toBe(self.keptFiles);
    expect(given).toEqual([
      { url: 'first.js', revision: 'b2', sha256: check('first'), isFirst: true },
      {
        url: 'index.html',
        revision: 'a1',
        sha256: check(readFileSync(join(folder, 'index.html'), 'utf8')),
        isFirst: true,
      },
      { url: 'later.js', revision: null, sha256: check('later') },
    ]);
  });

  test('is made anew for files that were changed since', () => {
    listKeptFiles(folder);
    write('later.js', 'changed');
    listKeptFiles(folder);
    expect(run().given).toContainEqual({ url: 'later.js', revision: null, sha256: check('changed') });
    expect(worker().match(/keptFiles=/g)).toHaveLength(1);
  });

  test('is missed where the library writes it otherwise: no build goes without', () => {
    write('sw.js', 's.precacheAndRoute(files,{});');
    expect(() => listKeptFiles(folder)).toThrow('no list');
  });
});
