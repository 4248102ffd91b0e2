import { describe, expect, test } from 'vitest';
import { type Audited, audit, makeSampleDay, withPage } from './lighthouse.ts';

// Performance is printed and not held: it is an estimate that follows the load of this machine.
function expectFullMarks({ scores, lost }: Audited): void {
  const held = { accessibility: 100, 'best-practices': 100 };
  expect(scores, lost.join('\n')).toMatchObject(held);
}

describe('Lighthouse gives full marks for accessibility and best practices', () => {
  test('to the first visit', async () => {
    await withPage(async (page, origin) => {
      const found = await audit('the first visit', page, `${origin}/`, 'first');
      expect(found.shown).toContain('Start a new day, or open the sample day');
      expectFullMarks(found);
    });
  });

  test('to the list of days with a day on it', async () => {
    await withPage(async (page, origin) => {
      await makeSampleDay(page, origin);
      const found = await audit('the list of days', page, `${origin}/`, 'later');
      expect(found.address).toBe(`${origin}/`);
      expect(found.shown).toMatch(/Nine Below Arnholt.*\n.* 75 takes/);
      expectFullMarks(found);
    });
  });

  test('to Now of the sample day', async () => {
    await withPage(async (page, origin) => {
      const day = await makeSampleDay(page, origin);
      const found = await audit('Now of the sample day', page, day, 'later');
      expect(found.address).toBe(`${origin}/#/day/sample-full/now`);
      expect(found.shown).toMatch(/Wiktoria\nA1 › cart 1 › line 1/);
      expectFullMarks(found);
    });
  });
});
