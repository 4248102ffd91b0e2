import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Audited, audit, makeSampleDay, type Opened, openPage } from './lighthouse.ts';

// Performance is printed and not held: it is an estimate that follows the load of this machine.
function expectFullMarks({ scores, lost }: Audited): void {
  const held = { accessibility: 100, 'best-practices': 100 };
  expect(scores, lost.join('\n')).toMatchObject(held);
}

describe('Lighthouse gives full marks for accessibility and best practices', () => {
  let opened: Opened;
  let day = '';
  beforeAll(async () => {
    opened = await openPage();
  });
  afterAll(() => opened.close());

  test('to the first visit', async () => {
    const { page, origin } = opened;
    const found = await audit('the first visit', page, `${origin}/`, 'first');
    expect(found.shown).toMatch(/^Rollbook\n/);
    expect(found.shown).toContain('Sample day');
    expectFullMarks(found);
  });

  test('to the list of days with a day on it', async () => {
    const { page, origin } = opened;
    day = await makeSampleDay(page, origin);
    const found = await audit('the list of days', page, `${origin}/`, 'later');
    expect(found.address).toBe(`${origin}/`);
    expect(found.shown).toMatch(/Nine Below Arnholt.*\n.* 75 takes/);
    expectFullMarks(found);
  });

  test('to Now of the sample day', async () => {
    const found = await audit('Now of the sample day', opened.page, day, 'later');
    expect(found.address).toBe(`${opened.origin}/#/day/sample-full/now`);
    expect(found.shown).toMatch(/Wiktoria\nA1 › cart 1 › line 1/);
    expectFullMarks(found);
  });
});
