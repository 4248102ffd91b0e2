import { describe, expect, test } from 'vitest';
import type { Fact } from '../../../src/day/model.ts';
import { KINDS } from '../../../src/facts/fact.ts';
import { factWords } from '../../../src/ui/words/facts.ts';
import { sentenceFor } from '../../../src/ui/words/problems.ts';
import { MORNING, speaker } from '../../day/say.ts';
import { EXAMPLE_BODIES } from '../../facts/example-bodies.ts';

describe('words', () => {
  test('a sentence never shows NaN, a number without end or a missing detail', () => {
    const sentences = [
      sentenceFor({ code: 'quantity-out-of-range', field: 'metres', value: 10_000, min: 0.1, max: 1000 }),
      sentenceFor({ code: 'quantity-out-of-range', field: 'bytes', value: 0, min: 1, max: 1e15 }),
      sentenceFor({ code: 'load-beyond-lead', mostWatts: 31.25 }),
      sentenceFor({ code: 'frequency-too-high', khz: 470_100_000, highestKhz: 100_000_000 }),
      sentenceFor({ code: 'quantity-not-finite', field: 'watts' }),
    ];
    expect(sentences.join(' ')).not.toMatch(/NaN|Infinity|undefined|e\+/);
    expect(sentences[0]).toBe('Length in metres: 10,000 is out of range. Between 0.1 and 1,000, please.');
    expect(sentences[3]).toBe(
      '470100.000 MHz is above 100000.000 MHz. Did you type kHz? Type MHz, as 606.250.',
    );
  });

  test.each(KINDS.map(({ name }) => name))('%s reads as one line', (name) => {
    const fact = { id: '00000b-phonea00000', kind: name, at: MORNING, zone: 0, ...EXAMPLE_BODIES[name] };
    const words = factWords(speaker().day(), fact as unknown as Fact);
    expect(words).not.toBe('');
    expect(words).not.toMatch(/undefined|NaN|\n/);
  });
});
