import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import '../../src/ui/words/later-problems.ts';
import { PREP_SENTENCES } from '../../src/ui/words/prep-problems.ts';
import { learnSentences, sentenceFor } from '../../src/ui/words/problems.ts';

const SRC = resolve(import.meta.dirname, '../../src');

/** Every code that something in the source fails with, and where. */
function codesThatFail(): Map<string, string> {
  const codes = new Map<string, string>();
  for (const name of readdirSync(SRC, { recursive: true, encoding: 'utf8' })) {
    if (!/\.tsx?$/.test(name)) continue;
    const text = readFileSync(join(SRC, name), 'utf8');
    for (const [, code] of text.matchAll(/\bfail\(\{\s*code: '([a-z0-9-]+)'/g)) codes.set(code!, name);
  }
  return codes;
}

test('everything that can fail has a sentence of its own', () => {
  learnSentences(PREP_SENTENCES);
  const codes = codesThatFail();
  expect(codes.size).toBeGreaterThan(60);
  const unsaid = [...codes].filter(([code]) => sentenceFor({ code }).includes(`(${code})`));
  expect(unsaid).toEqual([]);
});

test('a sentence shows what was typed cut short, and as text', () => {
  const typed = `<img src=x onerror=alert(1)>${'x'.repeat(500)}`;
  const sentence = sentenceFor({ code: 'slate-without-number', typed });
  expect(sentence).toContain('<img');
  expect(sentence.length).toBeLessThan(140);
});
