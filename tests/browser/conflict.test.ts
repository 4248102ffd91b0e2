import { expect, test } from 'vitest';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { speaker } from '../day/say.ts';
import { onStage } from './harness.ts';
import { isInReach } from './in-reach.ts';
import { openSaid } from './said-day.ts';
import { paste, tap } from './tapping.ts';

test('two phones that differ are told on the first screen, and one tap on what is true settles it', async () => {
  const [a, b] = [speaker('phonea'), speaker('phoneb')];
  a.say({ kind: 'roll-changed', roll: 'A1' });
  b.say({ kind: 'roll-changed', roll: 'B1' });
  const text = writeDayFile('day-1', 'Two phones', [...a.facts, ...b.facts]);
  await onStage({}, async (stage) => {
    const { page } = stage;
    await tap(page, /^Import day file/);
    await paste(page.getByLabel('Or paste the text'), text);
    await tap(page, 'Import what was pasted');
    await tap(page, '1 conflict');
    const sheet = page.getByRole('dialog');
    await sheet.getByRole('button', { name: /^roll B1/ }).waitFor();
    await sheet.getByRole('button', { name: /^roll A1/ }).tap();
    await sheet.getByText('No conflicts left').waitFor();
    await sheet.getByRole('button', { name: 'Close' }).tap();
    expect(await page.getByRole('button', { name: /conflict/ }).count()).toBe(0);
    expect(await page.locator('.head-day').textContent()).toContain('roll A1');
    await stage.waitSaved();
    await stage.reload();
    expect(await page.locator('.head-day').textContent()).toContain('roll A1');
  });
});

test('what settles a conflict is on a small screen without scrolling', async () => {
  const [a, b] = [speaker('phonea'), speaker('phoneb')];
  a.say({ kind: 'roll-changed', roll: 'A1' });
  b.say({ kind: 'roll-changed', roll: 'B1' });
  await onStage({ viewport: { width: 360, height: 640 } }, async (stage) => {
    await openSaid(stage, { facts: [...a.facts, ...b.facts] });
    await tap(stage.page, '1 conflict');
    for (const name of [/^roll B1/, /^roll A1/, /^Both happened/]) await isInReach(stage, name);
  });
});
