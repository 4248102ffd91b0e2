import { expect, test } from 'vitest';
import { bigDay } from '../day/big-day.ts';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';
import { openSaid } from './said-day.ts';

const AT = { clock: '2026-10-07T12:00:00Z', viewport: { width: 360, height: 640 } };

test('the sheet of a voice shows its chain as boxes from body to track, read in the same order, and where it breaks', async () => {
  await onStage(AT, async (stage) => {
    await openSaid(stage, bigDay());
    const { page, tap, tab, inSheet } = hands(stage);
    await tab('Cast');
    await tap(/^3 .*Conductor/);
    const chain = page().getByRole('list', { name: 'Chain of Conductor' });
    const boxes = () => chain.getByRole('listitem').allInnerTexts();
    await chain.waitFor();
    expect((await boxes()).map((one) => one.replaceAll('\n', ' '))).toEqual([
      'Conductor body',
      'A3 pack',
      'far 3 channel',
      'out 3 analogue',
      'selector 3 at cart',
      'line 3 line input',
      'track 6 iso, pre-fader',
    ]);
    // Four boxes to a row, and back: whole on the screen, and none over another.
    const frames = await chain.locator('.chain-box').evaluateAll((all) =>
      all.map((one) => {
        const { left, right, top, bottom } = one.getBoundingClientRect();
        return { left, right, top, bottom };
      }),
    );
    expect(frames.map(({ top }) => top === frames[0]!.top)).toEqual([
      ...[true, true, true, true],
      ...[false, false, false],
    ]);
    for (const [at, one] of frames.entries()) {
      expect([one.left >= 0, one.right <= 360]).toEqual([true, true]);
      for (const other of frames.slice(at + 1))
        expect(
          one.right <= other.left ||
            other.right <= one.left ||
            one.bottom <= other.top ||
            other.bottom <= one.top,
        ).toBe(true);
    }

    // Thrown the other way, it breaks after the selector, and says so.
    await inSheet('Close');
    await tab('Now');
    await tap(/Conductor/);
    await inSheet(/^selector 3 to/);
    await tab('Cast');
    await tap(/^3 .*Conductor/);
    await expect
      .poll(async () => (await boxes()).slice(-2).map((one) => one.replaceAll('\n', ' ')))
      .toEqual(['selector 3 at far box', expect.stringContaining('the chain breaks here: line 3')]);
    await page().getByRole('dialog').getByText('selector 3 is thrown the other way').waitFor();
    expect(await chain.locator('.chain-break').count()).toBe(1);
  });
});

test('who gets a pack and which pack is found by a few letters, and the field stays in sight', async () => {
  await onStage(AT, async (stage) => {
    await openSaid(stage, bigDay());
    const { page, tap, inSheet, closed } = hands(stage);
    const names = (list: string) =>
      page().getByRole('list', { name: list }).getByRole('button').locator('strong').allTextContents();
    await tap(/Rozália/);
    await inSheet('Find');
    const field = page().getByRole('searchbox', { name: 'Find' });
    await expect.poll(() => field.evaluate((one) => one === document.activeElement)).toBe(true);
    await field.fill('tib');
    expect(await names('Give A2 to')).toEqual(['Old Tibor', 'Young Tibor']);
    const box = (await field.boundingBox())!;
    expect(box.y + box.height).toBeLessThan(320);
    await field.fill('nobody of that name');
    await page().getByText('None by that name.').waitFor();
    await field.fill('17');
    await inSheet(/^Councillor Ferreira/);
    await closed();
    await page()
      .getByRole('status')
      .filter({ hasText: 'A2 on Councillor Ferreira' })
      .waitFor({ state: 'attached' });

    await tap(/– .*Bride/);
    await inSheet('Find');
    await field.fill('a2');
    expect(await names('Packs for Bride')).toEqual(['A2', 'A20', 'A21', 'A22']);
  });
});

test('the packs of the rig are listed with channel and track', async () => {
  await onStage(AT, async (stage) => {
    await openSaid(stage, bigDay());
    const { page, tap, tab } = hands(stage);
    await tab('Rig');
    await tap(/^Packs/);
    await page()
      .getByRole('button', { name: /^A3 far 3 › track 6 Conductor/ })
      .tap();
    await page().getByRole('dialog', { name: 'A3 is on Conductor' }).getByText('far 3 › track 6').waitFor();
  });
});
