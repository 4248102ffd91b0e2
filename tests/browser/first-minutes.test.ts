import { expect, test } from 'vitest';
import { type Hands, hands } from './hands.ts';
import { onStage } from './harness.ts';

const CAST = `1. INES - Anna Berg
2. DORA - Mia Holm
3. TOMAS - Jan Roth
4. MILA - Eva Lind`;

/**
 * What a practised hand needs, by the keystroke-level model of Card, Moran and Newell (Communications of the ACM 23,
 * 1980, table I): thinking before each step 1.35 s, pointing 1.10 s, a key 0.28 s for an average typist. A tap is all
 * three; pasting is three taps (hold, choose, confirm).
 */
const TAP_S = 1.35 + 1.1 + 0.28;
const KEY_S = 0.28;

/** The same hands, with every tap and key counted. */
function counted(does: Hands) {
  const spent = { taps: 0, keys: 0 };
  const tapping =
    <A extends unknown[]>(work: (...args: A) => Promise<void>) =>
    async (...args: A): Promise<void> => {
      spent.taps += 1;
      await work(...args);
    };
  const type = async (label: string | RegExp, value: string): Promise<void> => {
    spent.taps += 1;
    spent.keys += value.length;
    await does.fill(label, value);
  };
  const paste = async (label: string, value: string): Promise<void> => {
    spent.taps += 3;
    await does.fill(label, value);
  };
  const seconds = (): number => spent.taps * TAP_S + spent.keys * KEY_S;
  return { spent, seconds, type, paste, tap: tapping(does.tap), inSheet: tapping(does.inSheet) };
}

test('from the first launch to a wired day in under three minutes, each screen saying the next step', async () => {
  await onStage({ clock: '2026-10-07T18:00:00Z' }, async (stage) => {
    const does = hands(stage);
    const { page, closed } = does;
    const { spent, seconds, type, paste, tap, inSheet } = counted(does);
    const started = performance.now();
    const isSaid = (words: RegExp) => page().getByText(words).first().waitFor();
    const follow = async (link: string): Promise<void> => {
      spent.taps += 1;
      await page().getByRole('link', { name: link, exact: true }).tap();
    };

    await isSaid(/Log a change in two taps/);
    await tap('New day');
    await type('Production', 'Harbour');
    await inSheet('Start the day');
    await isSaid(/Start with what is closest/);
    await tap(/^Bag, 16 tracks/);
    await follow('Now');
    await isSaid(/No performers yet/);
    await follow('Add the cast');
    await tap('Call sheet');
    await paste('Call sheet text', CAST);
    await inSheet(/^Add 4/);
    await closed();
    await follow('Now');
    await isSaid(/4 performers without a pack/);
    await follow('Give packs');
    for (const [who, pack] of [
      ['Ines', 'A1'],
      ['Dora', 'A2'],
      ['Tomas', 'A3'],
      ['Mila', 'A4'],
    ] as const) {
      await tap(new RegExp(who));
      await inSheet(new RegExp(`^${pack}\\b`));
      await closed();
    }
    await follow('Now');
    await stage.waitSaved();
    const summary = (await page().locator('.summary').textContent()) ?? '';
    expect(summary).toMatch(/^6 sources · 6 of 15 isos .* · everyone recorded/);
    for (const who of ['Ines', 'Dora', 'Tomas', 'Mila'])
      expect(await page().locator('.rows .row', { hasText: who }).count(), who).toBe(1);
    const scripted = (performance.now() - started) / 1000;
    console.log(
      `A wired day: ${spent.taps} taps and ${spent.keys} keys, ${seconds().toFixed(0)} s by the keystroke-level model, ${scripted.toFixed(1)} s of script`,
    );
    expect(seconds()).toBeLessThan(180);
    expect(scripted).toBeLessThan(180);
    await stage.screenshot('first-minutes');
  });
});
