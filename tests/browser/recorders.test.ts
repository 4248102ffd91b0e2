import { describe, expect, test } from 'vitest';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';
import { startDay } from './tapping.ts';

const SMALL = { clock: '2026-10-07T07:00:00Z', viewport: { width: 360, height: 640 } };

describe('several recorders, each with a rig of its own', () => {
  test('each is set by itself from when on, and has its inputs, tracks and sends listed under it', async () => {
    await onStage(SMALL, async (stage) => {
      const { page, tap, inSheet, fill, take, tab, closed } = hands(stage);
      const sheet = page().getByRole('dialog');
      await startDay(page());
      await tab('Rig');
      await fill('Tracks and inputs', '6 tracks, 4 line');
      await tap('Use this recorder');
      await tap(/^Recorder /);
      await fill('Name of another recorder', 'Recorder');
      await inSheet('Add as a backup');
      await sheet.getByText(/in the rig already/).waitFor();
      await fill('Name of another recorder', 'Bag');
      await inSheet('Add as a backup');
      await sheet.getByText(/^the same tracks as Recorder/).waitFor();
      await inSheet(/^Recorder.*6 tracks/);
      await fill('Name', 'Cart');
      await inSheet(/^Save$/);
      await inSheet('Close');
      await closed();

      await tap(/^Add$/);
      await inSheet(/^Tracks/);
      await inSheet(/^Bag$/);
      await sheet.getByText(/until it has tracks of its own/).waitFor();
      await fill('How many', '3');
      await inSheet('Add the tracks');
      await closed();
      await tap(/^Add$/);
      await inSheet(/^Inputs/);
      await inSheet(/^Bag$/);
      await inSheet('Add the inputs');
      await closed();
      await tap(/^Add$/);
      await inSheet(/^Send/);
      await inSheet(/^Bag$/);
      await fill('Name', 'camera hop');
      await inSheet('Add the send');
      await closed();
      const heads = () => page().locator('.kit-section-head').allTextContents();
      await expect
        .poll(heads)
        .toEqual(
          expect.arrayContaining([
            expect.stringContaining('Inputs of Cart4 line'),
            expect.stringContaining('Tracks of Cart1 mix, 5 iso'),
            expect.stringContaining('Inputs of Bag2 mic'),
            expect.stringContaining('Tracks of Bag0 mix, 3 iso'),
            expect.stringContaining('Sends of Bagcamera hop'),
          ]),
        );
      await stage.screenshot('rig-of-two');

      // An input is offered the tracks of its own recorder alone.
      await page().getByRole('button', { name: /^in 1/ }).first().tap();
      await sheet.getByText(/^Bag · mic/).waitFor();
      const tracks = sheet.getByRole('group', { name: 'Feeds tracks' }).getByRole('button');
      expect(await tracks.allTextContents()).toEqual(['1', '2', '3']);
      await inSheet('Close');
      await closed();

      await tab('Now');
      await take('07:10:00', '07:10:20');
      await take('07:12:00', '07:12:20');
      await tap(/^About this day/);
      expect(await sheet.getByLabel('Sound roll from here on').count()).toBe(0);
      await inSheet('Recorders: Cart and Bag');
      await inSheet(/^Bag.*3 tracks/);
      await fill('Sound roll from here on', 'B1');
      await sheet.getByText('Roll B1 was in from').waitFor();
      await sheet.getByText('96 kHz', { exact: true }).tap();
      await stage.screenshot('one-recorder');
      await inSheet('before 1/2');
      await inSheet(/^Save$/);
      await sheet.getByText('3 tracks, 2 inputs · roll B1, 25 fps, 96 kHz, 24-bit').waitFor();
      await sheet.getByText('6 tracks, 4 inputs · no roll, 25 fps, 48 kHz, 24-bit').waitFor();
      await stage.screenshot('recorders');
    });
  });

  test('a second rig is laid beside the first, and what both use goes to both', async () => {
    await onStage(SMALL, async (stage) => {
      const { page, tap, inSheet, fill, tab, closed } = hands(stage);
      const sheet = page().getByRole('dialog');
      await startDay(page());
      await tab('Rig');
      await tap(/^Cart with a far box/);
      await tap(/^Recorder /);
      await inSheet('Add with its own rig');
      await sheet.getByText(/name/i).last().waitFor();
      await fill('Name of another recorder', 'Bag');
      await inSheet('Add with its own rig');
      await sheet.getByText('A rig for Bag').waitFor();
      await stage.screenshot('beside');
      await fill('Tracks and inputs', '8 tracks, 2 mic, 4 network');
      await inSheet('Use this recorder');
      await sheet.getByText(/^8 tracks, 6 inputs/).waitFor();
      await stage.screenshot('beside-laid');
      await inSheet('Close');
      await closed();

      // The far box goes to the bag as well: nothing comes out of the cart.
      await tap(/^Patch several$/);
      const choose = (label: string, name: string) => sheet.getByLabel(label).selectOption(name);
      await choose('Outputs of', 'far box');
      await choose('First input', 'net 1, Bag');
      await inSheet('Patch 4 leads');
      await closed();
      await page()
        .getByRole('button', { name: /^Receivers/ })
        .tap();
      await page()
        .getByRole('button', { name: /^far box 1/ })
        .first()
        .tap();
      await sheet.getByText(/On Recorder, far box 1/).waitFor();
      await stage.screenshot('one-output-two-leads');
      const text = await sheet.textContent();
      expect(text).toMatch(/On Recorder, far box 1 \(network\) goes toline 1, far box/);
      expect(text).toMatch(/On Bag, far box 1 \(network\) goes tonet 1/);
    });
  });
});
