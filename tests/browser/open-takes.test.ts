import { describe, expect, test } from 'vitest';
import { readDayFile, writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { speaker, take } from '../day/say.ts';
import { type Hands, hands } from './hands.ts';
import { onStage, type Stage } from './harness.ts';
import { startDay, tab } from './tapping.ts';

const dockButton = (page: Stage['page']) => page.locator('.dock > .roll');
const dockName = (page: Stage['page']) => page.locator('.dock-name strong');

/** Logs a take by hand where the form puts it, or at the gap of this name. */
async function logByHand({ tap, fill, inSheet, closed }: Hands, slate: string, gap?: RegExp): Promise<void> {
  await tap(/^Slate/);
  await inSheet(/^Log a missed take/);
  await fill('Slate, e.g. 24B', slate);
  await fill('Take number', '1');
  if (gap) await inSheet(gap);
  await inSheet(/^Log this take/);
  await closed();
}

describe('an open take keeps its Cut', () => {
  test('at the dock, when other takes are logged by hand before and behind it while it rolls', async () => {
    await onStage({ clock: '2026-10-07T07:00:00Z' }, async (stage) => {
      const hand = hands(stage);
      const { page, at, tap } = hand;
      await startDay(page());
      await at('07:10:00');
      await tap(/^Roll$/);
      await at('07:10:20');
      await logByHand(hand, '23C');
      await logByHand(hand, '22', /^now$/);
      expect(await dockButton(page()).textContent()).toBe('Cut');
      expect(await dockName(page()).textContent()).toBe('1/1');
      await stage.waitSaved();
      await stage.reload();
      expect(await dockButton(page()).textContent()).toBe('Cut');
      await at('07:11:00');
      await tap(/^Cut$/);
      await tab(page(), 'Line');
      // The newest stands first. A take that is logged afterwards was over before the one that rolled.
      const takes = await page().locator('.line-row strong:not(.line-change)').allTextContents();
      expect(takes).toEqual(['22/1', '1/1 · 1:00', '23C/1']);
    });
  });

  test("on Now and in its sheet, when it is a colleague's, and this phone rolls its own beside it", async () => {
    const colleague = speaker('phoneb');
    colleague.say(take('30', 0, 1, { length: null, rolledAt: Date.UTC(2026, 9, 7, 7, 0) }));
    colleague.say(take('30', 0, 2, { length: null, rolledAt: Date.UTC(2026, 9, 7, 7, 5) }));
    await onStage({ clock: '2026-10-07T07:10:00Z' }, async (stage) => {
      const { page, at, tap, inSheet, closed } = hands(stage);
      await tap('Import day file');
      await page()
        .getByLabel('Or paste the text')
        .fill(writeDayFile('day-1', 'Second unit', colleague.facts));
      await tap('Import what was pasted');
      await page().locator('.dock').waitFor();
      const others = page().getByRole('list', { name: 'Other takes that are rolling' });
      expect(await others.getByRole('listitem').count()).toBe(2);
      expect(await dockButton(page()).textContent()).toBe('Roll');
      await tap(/^Roll$/);
      expect(await dockName(page()).textContent()).toBe('30/3');
      expect(await others.getByRole('listitem').count()).toBe(2);
      await at('07:15:00');
      await others.getByRole('button', { name: 'Cut 30/1', exact: true }).tap();
      await others.getByRole('button', { name: /^30\/2 is rolling/ }).tap();
      await page().getByRole('dialog').getByText('rolling').waitFor();
      await inSheet(/^Cut$/);
      await page().getByRole('dialog').getByText('10:00').waitFor();
      await inSheet(/^Close$/);
      await closed();
      expect(await others.count()).toBe(0);
      expect(await dockButton(page()).textContent()).toBe('Cut');
      await tap(/^Cut$/);
      await tab(page(), 'Line');
      const takes = await page().locator('.line-row strong:not(.line-change)').allTextContents();
      expect(takes).toEqual(['30/3 · 5:00', '30/2 · 10:00', '30/1 · 15:00']);
    });
  });
});

test('the form of a take says only what was typed over: a length corrected leaves the numbered slate of a lettered day', async () => {
  const phone = speaker('phonea');
  phone.say({
    kind: 'take-logged',
    fields: {
      kind: 'take',
      slate: { style: 'numbered', number: 12, scene: '5A' },
      number: 3,
      length: { frames: 14_386, rate: '23.976' },
    },
  });
  await onStage({ clock: '2026-10-07T07:10:00Z' }, async (stage) => {
    const { page, tap, fill, inSheet, closed } = hands(stage);
    await tap('Import day file');
    await page()
      .getByLabel('Or paste the text')
      .fill(writeDayFile('day-1', 'Day 1', phone.facts));
    await tap('Import what was pasted');
    await page().locator('.dock').waitFor();
    await tab(page(), 'Line');
    await tap(/12\/3 · 10:00/);
    await inSheet('Edit');
    expect(await page().getByLabel('Slate number').inputValue()).toBe('12');
    expect(await page().getByLabel('Scene').inputValue()).toBe('5A');
    await fill('Length', '1:02:10');
    await inSheet('Save');
    await closed();
    await page()
      .getByRole('button', { name: /12\/3 · 1:02:10/ })
      .waitFor();
    await stage.waitSaved();
    await tab(page(), 'Now');
    await tap(/^About this day/);
    const copy = page().waitForEvent('download');
    await inSheet(/day file/i);
    const text = await (await (await copy).createReadStream()).toArray();
    const read = readDayFile(Buffer.concat(text).toString());
    const said = read.ok
      ? read.value.facts.filter((fact) => 'kind' in fact && fact.kind === 'take-described')
      : [];
    // 3730 s × 24000/1001 are 89,430.57 frames.
    const length = { frames: 89_431, rate: '23.976' };
    expect(said.map((fact) => 'fields' in fact && fact.fields)).toEqual([{ length }]);
  });
});
