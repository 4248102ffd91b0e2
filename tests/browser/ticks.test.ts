import { expect, test } from 'vitest';
import { tickable } from '../../src/day/phones/ticks.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { MORNING, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { SetPhone } from '../day/three-phones.ts';
import { onStage } from './harness.ts';
import { paste, tab, tap } from './tapping.ts';

const MINUTE = 60_000;

/** Two performers are needed; the utility has put the first pack on and fresh batteries in it, and ticked both. */
function ticked(): string {
  const [mixer, utility] = [new SetPhone(0, 0), new SetPhone(1, 0)];
  for (const draft of [...SMALL_RIG, ...SMALL_CAST]) mixer.say(draft, MORNING);
  mixer.say(take('24', 1, 1), MORNING + MINUTE);
  const needed = ['ines', 'dora'].map((voice) => ({ voice, need: 'needed' as const }));
  mixer.say({ kind: 'voices-needed', voices: needed }, MORNING + 2 * MINUTE);
  utility.take(mixer);
  utility.say({ kind: 'phone-named', name: 'Ines Roth', job: 'Utility' }, MORNING + 3 * MINUTE);
  for (const voice of ['ines', 'dora']) {
    const worn: Draft = { kind: 'transmitter-worn', transmitter: 'A1', voice };
    utility.say({ kind: 'move-ticked', ...tickable(worn), ticked: true }, MORNING + 4 * MINUTE);
  }
  utility.say({ kind: 'cells-changed', devices: ['A1'] }, MORNING + 5 * MINUTE);
  return writeDayFile('day-1', 'Salt Road', utility.facts);
}

test('ticks of another phone stand on the plan and the batteries, with whose they are, and this phone adds its own', async () => {
  await onStage({ clock: '2026-10-07T07:10:00Z' }, async (stage) => {
    const { page } = stage;
    await tap(page, 'Import day file');
    await paste(page.getByLabel('Or paste the text'), ticked());
    await tap(page, 'Import what was pasted');
    await page.locator('.dock').waitFor();
    const toPage = async (name: string): Promise<void> => {
      await page.evaluate((next) => {
        location.hash = location.hash.replace(/\w+$/, next);
      }, name);
      await page.locator(`main[data-tab="${name}"]`).waitFor();
    };

    await toPage('plan');
    const moves = page.getByRole('list', { name: 'Moves, in their order' }).getByRole('listitem');
    await page.getByText('Proven: no better plan exists.').waitFor();
    await page.getByRole('button', { name: 'Apply 1 ticked' }).waitFor();
    const theirs = moves.filter({ hasText: 'ticked by Ines Roth' });
    expect(await theirs.getByRole('checkbox').isChecked()).toBe(true);
    const other = moves.filter({ hasNotText: 'ticked by' }).first().getByRole('checkbox');
    expect(await other.isChecked()).toBe(false);
    await other.tap();
    await expect.poll(() => moves.getByRole('checkbox', { checked: true }).count()).toBe(2);
    await stage.screenshot('ticks-plan');
    // They outlive the screen; Undo takes this phone's own off, and no other.
    await tab(page, 'Line');
    await tap(page, 'Undo');
    await page.getByText('Undone: a move ticked').first().waitFor();
    await toPage('plan');
    await page.getByRole('button', { name: 'Apply 1 ticked' }).waitFor();
    await tap(page, 'Apply 1 ticked');
    await expect.poll(() => moves.getByRole('checkbox', { checked: true }).count()).toBe(0);

    await toPage('upkeep');
    await tap(page, /^Batteries/);
    await tap(page, 'Checklist');
    const sheet = page.getByRole('dialog');
    await sheet.getByText('1 of 3 done').waitFor();
    const done = sheet.getByRole('listitem').filter({ hasText: 'fresh 09:05 by Ines Roth' });
    expect(await done.getByRole('checkbox').isDisabled()).toBe(true);
    const mine = sheet.getByRole('listitem').filter({ hasText: 'A2' }).getByRole('checkbox');
    await mine.tap();
    await sheet.getByText('2 of 3 done').waitFor();
    await stage.screenshot('ticks-batteries');
    await mine.tap();
    await sheet.getByText('1 of 3 done').waitFor();
  });
});
