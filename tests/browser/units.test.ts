import { expect, test } from 'vitest';
import { speaker } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';
import { openSaid } from './said-day.ts';

test('a take is given to the second unit by one tap in its sheet, and the report says it of it and of those after it', () =>
  onStage({ clock: '2026-10-07T12:00:00Z', viewport: { width: 360, height: 640 } }, async (stage) => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    await openSaid(stage, phone);
    const { page, tab, inSheet, closed, take } = hands(stage);
    await take('12:01:00', '12:01:20');
    await take('12:02:00', '12:02:20');
    await tab('Line');
    await page().locator('.line-row').filter({ hasText: '1/2' }).first().tap();
    await inSheet('second');
    await page()
      .getByRole('dialog')
      .getByText(/second unit/)
      .first()
      .waitFor();
    await page().keyboard.press('Escape');
    await closed();
    await tab('Now');
    await take('12:03:00', '12:03:20');
    await tab('Wrap');
    const report = async (): Promise<string> =>
      ((await page().locator('.report-text').first().textContent()) ?? '').replaceAll(/\s+/g, ' ');
    await expect.poll(report).toContain('Units main unit: 1/1 second unit: 1/2 to 1/3');
    // Once in the head, and at each of the two takes.
    expect((await report()).match(/second unit/g)?.length).toBe(3);
  }));
