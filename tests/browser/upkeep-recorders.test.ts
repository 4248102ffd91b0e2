import { describe, expect, test } from 'vitest';
import { bothRolling } from '../day/two-recorders.ts';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';
import { openSaid } from './said-day.ts';

const SMALL = { clock: '2026-10-07T07:30:00Z', viewport: { width: 360, height: 640 } };

describe('the upkeep of two recorders', () => {
  test('jams the bag as a box, knows its card and its power, and has a wiring sheet of each', async () => {
    await onStage(SMALL, async (stage) => {
      const { page, tap, inSheet, fill, tab, closed } = hands(stage);
      const words = async (place: string) =>
        (await page().locator(place).allInnerTexts()).map((text) => text.replaceAll(/\s+/g, ' '));
      await openSaid(stage, bothRolling());
      await tab('Rig');
      await page()
        .getByRole('link', { name: /^Upkeep/ })
        .tap();

      await tap(/^Timecode/);
      await expect
        .poll(() => words('.device-row'))
        .toEqual([
          expect.stringMatching(/^Bag tolerance not set; not jammed yet/),
          expect.stringMatching(/^Cart .*everything is jammed from it/),
        ]);
      await tap('Jam Bag');
      await expect
        .poll(() => words('.device-row'))
        .toContainEqual(expect.stringMatching(/^Bag jammed .* from Cart/));
      await stage.screenshot('timecode');
      await tap(/^Bag jammed/);
      await page().getByRole('dialog').getByText('jammed like any other box').waitFor();
      await page().getByRole('dialog').getByRole('group', { name: 'From' }).waitFor();
      await inSheet('Close');
      await closed();
      await tap(/^Timecode/);

      await tap(/^Media/);
      for (const [name, size, recorder] of [
        ['Card A', '64', 'Cart'],
        ['Card B', '32', 'Bag'],
      ] as const) {
        await tap('Add a card');
        await fill('Name', name);
        await fill('Size, GB', size);
        await inSheet(recorder);
        await inSheet(/^Save$/);
        await closed();
      }
      const media = () => words('.kit-section:has(.rows)');
      // 5 and 3 tracks at 48 kHz, 24 bit, 1 % for all besides the sound: 24.45 and 20.37 h (arithmetic).
      await expect
        .poll(media)
        .toEqual([
          expect.stringMatching(
            /of recording left: Cart 24 h 27, Bag 20 h 22 .*Cart Card A .*5 tracks.* Bag Card B .*3 tracks/,
          ),
        ]);
      await expect
        .poll(() => words('.due strong:has(.due-kind)'))
        .toEqual(expect.arrayContaining(['Card A media in Cart', 'Card B media in Bag']));
      await stage.screenshot('media');
      await page()
        .getByRole('button', { name: /^Card B/ })
        .tap();
      const pressed = page().getByRole('group', { name: 'In which recorder' }).locator('[aria-pressed=true]');
      await expect.poll(() => pressed.allTextContents()).toEqual(['Bag']);
      await stage.screenshot('card');
      await inSheet('Close');
      await closed();
      await tap(/^Media/);

      await tap(/^Cart power/);
      await tap('Work out a DC lead');
      await inSheet('Bag');
      await stage.screenshot('power');
      await inSheet(/^Save$/);
      await closed();
      await page()
        .getByText(/^powers Bag · 2 m of AWG 16/)
        .waitFor();

      await tap('Wiring sheet');
      await expect
        .poll(() => words('.sheet-table'))
        .toEqual([
          expect.stringMatching(/^Into Cart .*near 1/),
          expect.stringMatching(/^Into Bag .*Boom .*near 1/),
        ]);
      expect(await page().locator('.problem').count()).toBe(0);
      await stage.screenshot('wiring');
    });
  });
});
