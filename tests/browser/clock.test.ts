import { expect, test } from 'vitest';
import { noteFault } from './faults-table.ts';
import { onStage, type Stage } from './harness.ts';
import { startDay, tab, tap } from './tapping.ts';

const roll = ({ page }: Stage): Promise<void> => tap(page, /^Roll$/);
const cut = ({ page }: Stage): Promise<void> => tap(page, /^Cut$/);

async function line({ page }: Stage): Promise<string[]> {
  await tab(page, 'Line');
  await page.locator('.line-row').first().waitFor();
  return (await page.locator('.line-row strong').allTextContents()).filter((text) => text.includes('·'));
}

// Summer time ends in Berlin on 25 October 2026 at 01:00 UTC (IANA time zone database).
test('summer time ends in a night shoot, a clock is set back and forward: order and lengths stay, and the day says what happened', async () => {
  await onStage({ clock: '2026-10-25T00:50:00Z', timezone: 'Europe/Berlin' }, async (stage) => {
    const { page } = stage;
    await startDay(page);
    // Twenty minutes over the hour that comes twice: 02:50 to 02:10.
    await roll(stage);
    await stage.setClock('2026-10-25T01:10:00Z');
    await cut(stage);
    // Somebody sets the phone back by an hour while a take rolls.
    await stage.setClock('2026-10-25T01:20:00Z');
    await roll(stage);
    await stage.turnClock('2026-10-25T00:20:00Z');
    await cut(stage);
    // And forward again, by a day, between two takes.
    await stage.turnClock('2026-10-26T01:30:00Z');
    await roll(stage);
    await stage.setClock('2026-10-26T01:30:40Z');
    await cut(stage);
    await stage.waitSaved();

    const [third, second, first] = await line(stage);
    expect(first).toBe('1/1 · 20:00');
    expect(second).toMatch(/^1\/2 · 0:[0-3]\d$/);
    expect(third).toBe('1/3 · 0:40');
    const head = (await page.locator('.body').textContent()) ?? '';
    expect(head).toContain('zone went from UTC+2 to UTC+1');

    // Somebody sets it ahead by two hours while a take rolls, with the app in view.
    await tab(page, 'Now');
    await roll(stage);
    await stage.turnClock('2026-10-26T03:30:40Z');
    await stage.setClock('2026-10-26T03:31:10Z');
    await cut(stage);
    expect((await line(stage))[0]).toMatch(/^1\/4 · 0:3\d$/);
    await page.getByText(/clock was set ahead 120 min before/).waitFor();

    // Set back between takes: nothing holds the clock then, and the day says so.
    await stage.turnClock('2026-10-26T00:30:00Z');
    await tab(page, 'Now');
    await roll(stage);
    await stage.setClock('2026-10-26T00:30:10Z');
    await cut(stage);
    const all = await line(stage);
    expect(all.map((text) => text.slice(0, 3))).toEqual(['1/5', '1/4', '1/3', '1/2', '1/1']);
    expect(all[0]).toBe('1/5 · 0:10');
    // Besides the hour that came twice, the clock set back during the second take was in summer time once more.
    // The fourth take ended by the counter, so the clock is an hour and a minute behind its end.
    await page.getByText(/clock was set back 61 min before 01:30, and 5 such changes before/).waitFor();
    noteFault('clock set back and ahead, summer time ends', '5 takes', 5 - all.length);
  });
});
