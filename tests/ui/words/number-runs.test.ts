import { expect, test } from 'vitest';
import { runWords } from '../../../src/ui/words/number-runs.ts';

test.each([
  [['A1', 'A2', 'A3', 'B1'], 'A1–3, B1'],
  [['near 1', 'near 2', 'near 4'], 'near 1–2, near 4'],
  [['9', '10', '11'], '9–11'],
  [['2', '4'], '2, 4'],
  [['Mix', 'comms'], 'Mix, comms'],
  [['A09', 'A10'], 'A09, A10'],
  [['A2', 'A1'], 'A2, A1'],
  [[], ''],
])('%j is said as %j', (names, words) => {
  expect(runWords(names)).toBe(words);
});
