import { expect, test } from 'vitest';
import { TABS } from '../../../src/ui/frame/route.ts';
import { FIRST_STEPS, WORD_MEANS } from '../../../src/ui/help/words.ts';
import { INPUT_WORD, TRACK_WORD, VOICE_MARK, VOICE_WORD } from '../../../src/ui/words/chain.ts';
import { MARK_MEANS } from '../../../src/ui/words/means.ts';

test('the page calls each mark what the screens call it', () => {
  const means: Partial<Record<string, { readonly word: string }>> = MARK_MEANS;
  for (const [state, word] of Object.entries({ ...TRACK_WORD, ...INPUT_WORD }))
    if (word !== '') expect(means[state]?.word, state).toBe(word);
  expect(means[VOICE_MARK.unrecorded]?.word).toBe(VOICE_WORD.unrecorded);
});

test('every word is explained once, and the way through a day passes its tabs', () => {
  const words = WORD_MEANS.flatMap(([word]) => word.split(', '));
  expect(words.length).toBe(new Set(words).size);
  const steps = FIRST_STEPS.map(([where]) => where.toLowerCase());
  expect(TABS.filter((tab) => tab !== 'line' && !steps.includes(tab))).toEqual([]);
});
