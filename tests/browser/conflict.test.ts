import { expect, test } from 'vitest';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { speaker, take } from '../day/say.ts';
import { onStage } from './harness.ts';
import { isInReach } from './in-reach.ts';
import { openSaid } from './said-day.ts';
import { paste, tab, tap } from './tapping.ts';

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

test('two takes are offered as one where they start together, and only there; Undo makes them two again', async () => {
  const [a, b] = [speaker('phonea'), speaker('phoneb')];
  a.say(take('24', 1, 1));
  b.say(take('24', 1, 1, { start: { frames: 90_050, rate: '25' } }));
  a.say(take('25', 1, 1));
  b.say(take('25', 1, 1, { start: { frames: 180_000, rate: '25' } }));
  await onStage({}, async (stage) => {
    const { page } = stage;
    await openSaid(stage, { facts: [...a.facts, ...b.facts] });
    await tap(page, '2 conflicts');
    const sheet = page.getByRole('dialog');
    await sheet.getByText('25A/1 was logged twice').waitFor();
    expect(await sheet.getByRole('button', { name: /^This is one take/ }).count()).toBe(1);
    await stage.screenshot('one-take');
    await tap(page, /^This is one take.*one 24A\/1/);
    await sheet.getByRole('heading', { name: '1 conflict', exact: true }).waitFor();
    expect(await sheet.getByRole('button', { name: /^This is one take/ }).count()).toBe(0);
    await sheet.getByRole('button', { name: 'Undo' }).tap();
    await sheet.getByRole('heading', { name: '2 conflicts', exact: true }).waitFor();
    // Later it is taken back where the other phone's take stands on the line.
    await tap(page, /^This is one take.*one 24A\/1/);
    await sheet.getByRole('heading', { name: '1 conflict', exact: true }).waitFor();
    await sheet.getByRole('button', { name: 'Close' }).tap();
    await tab(page, 'Line');
    await tap(page, /24A\/1.*logged on two phones, one take/);
    await sheet.getByText('24A/1, logged on two phones').waitFor();
    await stage.screenshot('one-take-sheet');
    await tap(page, 'They are two takes');
    await page.getByText('24A/1: two takes again').first().waitFor();
    await tab(page, 'Now');
    await page.getByRole('button', { name: '2 conflicts' }).waitFor();
  });
});
