import { expect, test } from 'vitest';
import { slatesOnLine } from '../../src/day/answers/found-on-line.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { takeText } from '../../src/day/slate.ts';
import { takesInOrder } from '../../src/day/takes.ts';
import { dayOfTakes, pathOf, phoneWith } from '../bench/phone.ts';

const TAKES = 600;

test('of 600 takes one is found by slate, note or name, with no signal, and the list stays short', async () => {
  const made = dayOfTakes(TAKES);
  const day = foldDay(made.day, made.facts);
  const stage = await phoneWith([made], { path: pathOf(made.day).replace(/now$/, 'line') });
  try {
    const { page } = stage;
    await stage.reload();
    const rows = page.locator('.line-row');
    await rows.first().waitFor();
    await page.getByText(`${TAKES} takes`).first().waitFor();
    // What is not shown is not drawn: an old phone has little to scroll.
    await expect.poll(() => rows.count()).toBe(120);
    // What is asked for is all drawn, however often.
    for (const asked of [240, 360]) {
      await page.getByRole('button', { name: /earlier entries$/ }).tap();
      await expect.poll(() => rows.count()).toBe(asked);
    }

    // The first setup of the day, from its end: one choice, and no longer a list than before.
    const oldest = slatesOnLine(day).at(-1)!;
    await page.getByLabel('Go to a slate').selectOption(oldest.take);
    const target = page.locator(`[data-item="${oldest.take}"] button`);
    await expect.poll(() => target.evaluate((one) => one === document.activeElement)).toBe(true);
    const { y } = (await target.boundingBox())!;
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y).toBeLessThan(844);
    expect(await rows.count()).toBeLessThanOrEqual(120);
    await page.getByRole('button', { name: /later entries$/ }).waitFor();

    const noted = takesInOrder(day).find(({ notes }) => notes.length > 0)!;
    const find = page.getByLabel('Find takes, notes and names');
    await find.fill(noted.notes[0]!.text);
    await expect
      .poll(() => rows.allTextContents())
      .toEqual(expect.arrayContaining([expect.stringContaining(noted.notes[0]!.text)]));
    const performer = [...day.voices.values()].find(({ kind }) => kind === 'performer')!;
    await find.fill(performer.part);
    await page.getByText(/^\d+ found$/).waitFor();
    expect(await rows.count()).toBeGreaterThan(0);
    await find.fill(takeText(takesInOrder(day)[3]!));
    await expect.poll(() => rows.count()).toBeGreaterThan(0);
    await find.fill('nobody is called this');
    await page.getByText('Nothing on the line matches.').waitFor();
  } finally {
    await stage.close();
  }
});
