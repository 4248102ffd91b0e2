import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { sentenceFor } from '../../../src/ui/words/problems.ts';

const SRC = resolve(import.meta.dirname, '../../../src');
const CODES = 'shared/problem.ts';
const SENTENCES = 'ui/words/problems.ts';

const textOf = (name: string): string => readFileSync(join(SRC, name), 'utf8');

// That each code has its sentence, and each sentence its code, is seen to by the compiler.
test('something fails with every code there is', () => {
  const said = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && name !== CODES && name !== SENTENCES)
    .map(textOf)
    .join('\n');
  const codes = [...textOf(CODES).matchAll(/^ {2}'([a-z0-9-]+)':/gm)].map(([, code]) => code!);
  expect(codes.length).toBeGreaterThan(150);
  expect(codes.filter((code) => !said.includes(`'${code}'`))).toEqual([]);
});

test('a sentence shows what was typed cut short, and as text', () => {
  const typed = `<img src=x onerror=alert(1)>${'x'.repeat(500)}`;
  const sentence = sentenceFor({ code: 'slate-without-number', typed });
  expect(sentence).toContain('<img');
  expect(sentence.length).toBeLessThan(140);
});
