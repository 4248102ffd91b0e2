import { expect, test } from 'vitest';
import { noteSent } from '../../src/commands/day/send-report.ts';
import { knownOf } from '../../src/day/wrap/sent-reports.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { MORNING, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { SetPhone } from '../day/three-phones.ts';
import { onStage } from './harness.ts';
import { paste, tab, tap } from './tapping.ts';

const MINUTE = 60_000;

/** Ana wrapped and sent report A; Jon logged a take before his phone had heard of it, and added a note after. */
function afterWrap(): string {
  const [ana, jon] = [new SetPhone(0, 0), new SetPhone(1, 0)];
  const said = (minutes: number): number => MORNING + minutes * MINUTE;
  ana.say({ kind: 'day-described', fields: { production: 'Harbour Lights', label: 'Day 4' } }, MORNING);
  for (const draft of [...SMALL_RIG, ...SMALL_CAST]) ana.say(draft, MORNING);
  ana.say({ kind: 'phone-named', name: 'Ana Brandt', job: 'Mixer' }, MORNING);
  const first = ana.say(take('24', 1, 1), said(10));
  jon.take(ana);
  jon.say({ kind: 'phone-named', name: 'Jon Berg', job: 'Boom operator' }, said(11));
  ana.say({ kind: 'day-wrapped', wrapped: true }, said(640));
  const made = {
    paper: 'a4' as const,
    lines: 'take' as const,
    columns: ['file'],
    signature: '',
    matters: [],
  };
  const sent = noteSent({
    ...{ letter: 'A', route: 'share', files: ['report.txt'], to: [], made },
    from: knownOf(ana.day()),
  });
  if (!sent.ok) throw new Error(sent.problem.code);
  ana.say(sent.value[0]!, said(650));
  jon.say(take('24', 1, 2), said(652));
  jon.take(ana);
  jon.say({ kind: 'note-added', take: first.id, text: 'radio hit' }, said(660));
  return writeDayFile('day-1', '', jon.facts);
}

test('a wrapped day says who wrapped it, what came later, and offers the revision', async () => {
  await onStage({ clock: '2026-10-07T20:00:00Z' }, async (stage) => {
    const { page } = stage;
    const headFacts = () => page.locator('.head-facts').textContent();
    await tap(page, 'Import day file');
    await paste(page.getByLabel('Or paste the text'), afterWrap());
    await tap(page, 'Import what was pasted');
    await page.locator('.dock').waitFor();
    expect(await headFacts()).toContain('wrapped');

    await tab(page, 'Line');
    await page
      .getByText(
        'Wrapped at 17:40 by Ana Brandt. Since then 1 entry was made, and 1 came in from a phone that had not heard.',
      )
      .waitFor();
    await page.getByText(/^Report A sent at 17:50 by Ana Brandt: \d+ changes since\.$/).waitFor();
    await page
      .getByRole('button', { name: /24A\/1.*radio hit · Ana Brandt · changed after report A/ })
      .waitFor();
    await page.getByRole('button', { name: /24A\/2.*Jon Berg · came in after report A/ }).waitFor();
    await stage.screenshot('wrapped-line');
    await tap(page, /24A\/2.*came in after report A/);
    await page.getByRole('dialog').getByText('Jon Berg · came in after report A').waitFor();
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();

    await tap(page, 'Revision B');
    await page.locator('.send-dock').getByText('Revision B').waitFor();
    await page.getByText(/^Report A sent at 17:50 by Ana Brandt: \d+ changes since\.$/).waitFor();
    await stage.screenshot('wrapped-wrap');

    await tap(page, 'Reopen the day');
    await page.getByText('Day reopened').first().waitFor();
    expect(await headFacts()).not.toContain('wrapped');
    await stage.screenshot('wrapped-reopened');
    await page.locator('.message').getByRole('button', { name: 'Undo' }).tap();
    await expect.poll(headFacts).toContain('wrapped');
    await stage.waitSaved();
    await stage.reload();
    expect(await headFacts()).toContain('wrapped');
  });
});
