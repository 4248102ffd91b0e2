import { expect, test } from 'vitest';
import { onStage } from './harness.ts';

test('the next setup is planned, ticked and applied on the full sample day, and every line after it is right', async () => {
  await onStage({ clock: '2026-11-20T03:10:00Z' }, async (stage) => {
    const { page } = stage;
    const button = (name: string | RegExp) => page.getByRole('button', { name }).first();
    const tab = (name: string) => page.getByRole('link', { name, exact: true }).tap();
    const report = async (): Promise<string[]> => {
      await tab('Wrap');
      return ((await page.locator('.report-text').textContent()) ?? '').split('\n');
    };
    await stage.waitOfflineReady();
    await button('Sample day').tap();
    await page.locator('.rows .row').first().waitFor();
    await stage.killServer();
    const before = await report();

    // Emil and Dr Brandão come back; Zuzu is not needed. Emil is done for the day, and is asked for all the same.
    await tab('Cast');
    await page.getByRole('link', { name: 'Next setup' }).tap();
    await button(/^Emil/).tap();
    await button(/^Dr Brandão/).tap();
    await button(/^Zuzu/).tap();
    const moves = page.getByRole('list', { name: 'Moves, in their order' }).getByRole('listitem');
    const words = await moves.allTextContents();
    expect(words.filter((text) => /put \w+ on Emil/.test(text))).toHaveLength(1);
    expect(words.filter((text) => /put \w+ on Dr Brandão/.test(text))).toHaveLength(1);
    expect(await page.locator('.plan-cost').textContent()).toContain('everybody recorded');

    // The utility does the first one and ticks it; that part is accepted alone, and the rest after it.
    await moves.first().getByRole('checkbox').tap();
    await button('Only the 1 ticked').tap();
    await expect.poll(() => moves.count()).toBe(words.length - 1);
    await button(/^Accept all/).tap();
    await page.locator('.dock').waitFor();
    const summary = (await page.locator('.summary').textContent()) ?? '';
    expect(summary).toContain('no clash, nobody unrecorded');

    // Two takes later, the lines before are as they were, and the new ones have the two who came.
    for (const minutes of [11, 13]) {
      await stage.setClock(`2026-11-20T03:${minutes}:00Z`);
      await button(/^Roll$/).tap();
      await stage.setClock(`2026-11-20T03:${minutes}:50Z`);
      await button(/^Cut$/).tap();
    }
    await stage.waitSaved();
    await stage.reload();
    const after = await report();
    const takesOf = (lines: string[]): string[] =>
      lines.slice(lines.indexOf('TAKES'), lines.indexOf('TOTALS') - 1);
    expect(takesOf(after).slice(0, takesOf(before).length)).toEqual(takesOf(before));
    const added = takesOf(after).slice(takesOf(before).length).join('\n');
    expect(added.match(/Emil/g)).toHaveLength(2);
    expect(added.match(/Dr Brandão/g)).toHaveLength(2);
    expect(added).not.toMatch(/ganged|not on purpose/);

    // Two takes were four actions; the fifth undo takes the rest of the plan back whole.
    await tab('Line');
    for (let step = 0; step < 5; step += 1) await button('Undo the last').tap();
    await tab('Cast');
    await page.getByRole('link', { name: 'Next setup' }).tap();
    await expect.poll(() => moves.count()).toBe(words.length - 1);
  });
});
