import { describe, expect, test } from 'vitest';
import { partMissingWords } from '../../../src/ui/words/part-missing.ts';

describe('a part of the app that did not come', () => {
  test('is said to come with opening the app again only where its files are on the phone', () => {
    expect(partMissingWords(true, false)).toBe(
      'Part of the app could not be loaded. Open the app again; nothing is lost.',
    );
    expect(partMissingWords(false, false)).toBe(
      'This part of the app is not on this phone. It is fetched when the app is next opened with signal; nothing is lost.',
    );
  });

  test('is no reason to open the app again while something is not saved, and nothing is promised then', () => {
    for (const isOnPhone of [true, false]) {
      const words = partMissingWords(isOnPhone, true);
      expect(words).toContain('not before everything here is saved');
      expect(words).not.toContain('nothing is lost');
    }
  });
});
