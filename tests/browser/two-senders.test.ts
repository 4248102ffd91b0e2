import { expect, test } from 'vitest';
import { noteSent } from '../../src/commands/day/send-report.ts';
import { knownOf } from '../../src/day/wrap/sent-reports.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import type { ReportMade } from '../../src/facts/kinds/report-sent.ts';
import { MORNING, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { SetPhone } from '../day/three-phones.ts';
import { onStage } from './harness.ts';
import { paste, tab, tap } from './tapping.ts';

/** A day on which two phones each sent an A of their own. */
function merged(): string {
  const [a, b] = [new SetPhone(0, 0), new SetPhone(1, 0)];
  a.say({ kind: 'day-described', fields: { production: 'Harbour Lights', label: 'Day 4' } }, MORNING);
  for (const draft of [...SMALL_RIG, ...SMALL_CAST]) a.say(draft, MORNING);
  b.take(a);
  for (const [at, phone] of [a, b].entries()) {
    phone.say(take('24', at + 1, 1), MORNING + at * 60_000);
    const made: ReportMade = { paper: 'a4', lines: 'take', columns: ['file'], signature: '', matters: [] };
    const from = knownOf(phone.day());
    const said = noteSent({ letter: 'A', route: 'share', files: ['report.txt'], to: [], made, from });
    if (said.ok) phone.say(said.value[0]!, MORNING + (662 + 3 * at) * 60_000);
  }
  a.take(b);
  return writeDayFile('day-1', '', a.facts);
}

test('a revision after two phones each sent an A says with which of them it is compared', async () => {
  await onStage({ clock: '2026-10-07T20:00:00Z' }, async (stage) => {
    const { page } = stage;
    await tap(page, 'Import day file');
    await paste(page.getByLabel('Or paste the text'), merged());
    await tap(page, 'Import what was pasted');
    await page.locator('.dock').waitFor();
    await tab(page, 'Wrap');
    await page.getByText('compared with A of 18:05').waitFor();
    await page.getByText('Two different reports A went out, from two phones').first().waitFor();
    expect(await page.getByText('from another phone').count()).toBe(2);
    await stage.screenshot('two-senders');
    await page.getByText('Two different reports A went out').first().scrollIntoViewIfNeeded();
    await stage.screenshot('two-senders-report');
  });
});
