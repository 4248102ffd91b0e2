import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { withChecks } from '../.ci/kept-list.mjs';

let folder: string;
const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);
// W3C Subresource Integrity, 3.1: the name of the digest and the digest in base64.
const check = (name: string): string =>
  `sha256-${createHash('sha256')
    .update(readFileSync(join(folder, name)))
    .digest('base64')}`;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'rollbook-kept-'));
  write('index.html', '<script src="/first.js"></script><a href="/later.js.html"></a>');
  write('first.js', 'first');
  write('later.js', 'later');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('the list of files that the worker keeps has a check of each, and what the app starts with first', () => {
  const files = [
    { url: 'later.js', revision: null },
    { url: 'first.js', revision: 'b2' },
    { url: 'index.html', revision: 'a1' },
  ];
  expect(withChecks(folder, files)).toEqual([
    { url: 'first.js', revision: 'b2', integrity: check('first.js'), isFirst: true },
    { url: 'index.html', revision: 'a1', integrity: check('index.html'), isFirst: true },
    { url: 'later.js', revision: null, integrity: check('later.js') },
  ]);
});

test('no list is made of a file that is not there', () => {
  expect(() => withChecks(folder, [{ url: 'gone.js' }])).toThrow('gone.js');
});
