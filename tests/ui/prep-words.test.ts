import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Fact } from '../../src/day/model.ts';
import { KINDS } from '../../src/facts/fact.ts';
import { factWords } from '../../src/ui/words/facts.ts';
import { PREP_SENTENCES } from '../../src/ui/words/prep-problems.ts';
import { learnSentences, sentenceFor } from '../../src/ui/words/problems.ts';
import { MORNING, speaker } from '../day/say.ts';
import { EXAMPLE_BODIES } from '../facts/example-bodies.ts';

learnSentences(PREP_SENTENCES);

const SRC = resolve(import.meta.dirname, '../../src');
const FILES = [
  ...['radio', 'upkeep'].flatMap((room) => readdirSync(join(SRC, room)).map((name) => `${room}/${name}`)),
  ...['bounds', 'plan-radio', 'keep-up', 'describe-runs', 'shift-times', 'typed-number'].map(
    (name) => `commands/${name}.ts`,
  ),
];
const codes = new Set(
  FILES.flatMap((name) => [
    ...readFileSync(join(SRC, name), 'utf8').matchAll(
      /(?:fail\(|problem: |\? undefined : |return )\{ code: '([a-z-]+)'/g,
    ),
  ]).map((match) => match[1]!),
);

describe('words', () => {
  test('every problem of radio, upkeep and their commands has a sentence', () => {
    expect(codes.size).toBeGreaterThan(30);
    const wordless = [...codes].filter((code) => /^That did not work/.test(sentenceFor({ code, leads: [] })));
    expect(wordless).toEqual([]);
  });

  test('a sentence never shows NaN, a number without end or a missing detail', () => {
    const sentences = [
      sentenceFor({ code: 'quantity-out-of-range', field: 'metres', value: 10_000, min: 0.1, max: 1000 }),
      sentenceFor({ code: 'quantity-out-of-range', field: 'bytes', value: 0, min: 1, max: 1e15 }),
      sentenceFor({ code: 'load-beyond-lead', watts: 90, mostWatts: 31.25 }),
      sentenceFor({ code: 'frequency-too-high', khz: 470_100_000, highestKhz: 100_000_000 }),
      sentenceFor({ code: 'quantity-not-finite', field: 'watts' }),
    ];
    expect(sentences.join(' ')).not.toMatch(/NaN|Infinity|undefined|e\+/);
    expect(sentences[0]).toBe('Length in metres: 10,000 cannot be. Between 0.1 and 1,000, please.');
    expect(sentences[3]).toBe(
      '470100.000 MHz is above 100000.000 MHz. Were kHz typed? Type MHz, as 606.250.',
    );
  });

  test.each(KINDS.map(({ name }) => name))('%s reads as one line', (name) => {
    const fact = { id: '00000b-phonea00000', kind: name, at: MORNING, zone: 0, ...EXAMPLE_BODIES[name] };
    const words = factWords(speaker().day(), fact as unknown as Fact);
    expect(words).not.toBe('');
    expect(words).not.toMatch(/undefined|NaN|\n/);
  });
});
