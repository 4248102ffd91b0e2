import { describe, expect, test } from 'vitest';
import { handOverCautions } from '../../../src/ui/wrap/hand-over-words.ts';

const whole = { whole: true, was: 'whole', count: 0 } as const;
const card = (copies: number) => ({ name: 'Card A', copies });
const LOST = 'Cards get lost: make two checked copies first.';

describe('what speaks against handing cards over', () => {
  test('is nothing where they were checked and copied twice', () => {
    expect(handOverCautions(whole, [card(2), card(3)])).toEqual([]);
  });

  test('is each card without two checked copies', () => {
    expect(handOverCautions(whole, [card(1), { name: 'Drive', copies: 0 }, card(2)])).toEqual([
      'Card A has only one checked copy.',
      'Drive has no checked copy.',
      LOST,
    ]);
  });

  test.each([
    ['never', 0, 'The files were not checked against the log.'],
    ['stopped', 0, 'The card check was stopped before the last file.'],
    ['open', 1, '1 difference between the files and the log is open.'],
    ['open', 3, '3 differences between the files and the log are open.'],
    ['before-last-takes', 2, '2 takes were logged since the card was checked.'],
  ] as const)('is a check that is not whole: %s, %d', (was, count, words) => {
    expect(handOverCautions({ whole: false, was, count }, [card(2)])).toEqual([words]);
  });
});
